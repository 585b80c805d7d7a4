import type { ProblemCode } from '../../../../server/contract/routes.ts'
import type { RefusalReason } from '../../../../server/contract/vocabulary.ts'

export interface CauseAndRemedy {
  cause: string
  remedy: string
}

/** The manual that the box serves: how to go about it, what can go wrong and what to do, and the cautions. */
export const en = {
  title: 'Manual',
  why: 'It lies in the box itself and needs no internet. Print it before you need it.',
  print: 'Print it',
  link: 'Manual',
  codeIs: 'code',
  parts: {
    cautions: 'Cautions',
    howTo: 'How to',
    alarms: 'Alarms: what to do first',
    problems: 'When the box says no',
    refusals: 'When readings of a node are refused',
    imports: 'When a file can not be taken in',
  },
  refusalsWhy: 'The box counts what it refuses and keeps a copy; the rest of the message is used all the same. For whoever makes the node.',
  cautions: [
    'This is advice for a practised person. Local rules on fire, smoke and selling, and licensed practice, come first.',
    'Carbon monoxide has no smell. Stay upwind. Never put your head over the mouth or the chimney, never enter a kiln, never sleep beside or downwind of one. A low reading never clears the air.',
    'Only clean wood: nothing treated, painted, glued or unknown. No galvanised or painted metal, no chemical drum, no asbestos cement.',
    'Gloves and goggles at hot metal, steam and raw liquid. Raw liquid burns skin and eyes; it is never a drink. Never a drink bottle for it.',
    'Sealing: stand aside, mouth first, chimney last, clay on every crack that smokes.',
    'Opening: never by the clock. A small gap first, wet clay ready, 30 minutes of watching. Any glow, smoke or rise: close it again. No number here can tell that no fire is left inside.',
    'Charcoal heats itself: spread it outdoors, watch it until it is cold through, air it before it goes under a roof.',
    'Tar is harmful: keep it closed, out of the ground and out of waterways.',
    'The tool may fail at any moment. Keep the printed card at the kiln; eye and nose go before every number.',
  ],
  howTo: [
    {
      title: 'Begin',
      steps: [
        'Start the box. Open the address that it shows, on the tablet.',
        'Set up: language, place and clock, then the kiln.',
        'Switch a node on with the address of the box in it. It shows up by itself.',
        'Say what each probe measures. Warm one with the hand: its number rises.',
        'Make the sound test with tablet and buzzer.',
      ],
    },
    {
      title: 'Fire',
      steps: [
        'Plan, Charge: weigh the wood and a sample of it, moist and dried.',
        'Plan, Before lighting: go through the list. Light no later than the hour shown.',
        'Log lighting, feeding and wetting with one touch each. What you see of smoke and drip counts more than a probe.',
        'Follow the large sentence. Stop collecting rather early than late.',
        'After sealing look for leaks every hour of daylight. Keep it shut until the call for a trial opening.',
      ],
    },
    {
      title: 'Put a wrong entry right',
      steps: [
        'Log: touch the entry, Put right. The first one stays to be seen.',
        'After the firing: Firings, the firing, Correct the weighing. Earlier figures are kept.',
        'Probes sat elsewhere, or read too high: Firings, the firing, Put probes right. It is worked out anew; both stay.',
      ],
    },
    {
      title: 'Compare firings',
      steps: [
        'Firings, Choose some to compare: two to six.',
        'Line them up at lighting, at a phase or by the clock.',
        'Numbers on the lines and in the table are the same.',
      ],
    },
    {
      title: 'Take out and take in',
      steps: [
        'Firings, the firing, Take it out. The recording holds everything; keep a copy away from the box.',
        'Firings, Take in a file: a recording, or a table. Say what each column is, look at the first lines, then say yes.',
        'A bad line is named by its number. Nothing of the file is kept until it is mended.',
      ],
    },
    {
      title: 'Lots, rest and use',
      steps: [
        'Lots: bottle the firing the same day. Leave the vessel alone for 90 days.',
        'Measure the layers, draw off the middle only. Tar goes into its own tin.',
        'Enter a check before use. Use: choose what it is for; the card says how much and what is not allowed.',
      ],
    },
    {
      title: 'When the screen is dead',
      steps: [
        'Drip dark: take the bottle away. Smoke thin and blue, then clear: seal.',
        'Keep it shut until it is cold to the hand all around and has been shut for a night at least. Then a small gap only.',
        'Write times on paper; enter them later with their time.',
      ],
    },
  ],
  problems: {
    'bad-request': {
      cause: 'The page asked for something that the box does not know.',
      remedy: 'Load the page again. Page and box may be of different versions.',
    },
    'not-json': { cause: 'What the page sent arrived garbled.', remedy: 'Send it again. If it stays, load the page again.' },
    'not-allowed': {
      cause: 'This tablet may look on but not act, or not do this.',
      remedy: 'Ask the owner for an invitation and open its link on this tablet.',
    },
    'foreign-page': { cause: 'Another page than that of the box tried to act.', remedy: 'Open the address of the box itself.' },
    'not-found': { cause: 'It is not there: removed, or its address is wrong.', remedy: 'Go back to the list and choose again.' },
    'too-large': {
      cause: 'The file or the entry is larger than the box takes.',
      remedy: 'Take a smaller picture, or take the file in by parts.',
    },
    'wrong-type': { cause: 'The page sent another kind of thing than is expected.', remedy: 'Load the page again.' },
    'unknown-host': {
      cause: 'The box was called by a name that it does not know.',
      remedy: 'Use its number address, or let the owner add the name in Set up.',
    },
    'not-understood': { cause: 'A field of what was entered can not be so.', remedy: 'Look at the field named, enter it anew.' },
    'unknown-kiln': { cause: 'There is no kiln of that short name.', remedy: 'Choose a kiln from the list, or make it in Set up.' },
    'unknown-act': { cause: 'The entry that was to be put right is not in the log.', remedy: 'Look at the log and enter it anew.' },
    'bad-settings': {
      cause: 'A setting is outside what is possible.',
      remedy: 'Each one is named with its limits; mend them all, then keep again.',
    },
    'bad-import': {
      cause: 'A line of the file is not as it should be.',
      remedy: 'The line is named. Mend it in the file and choose the file again.',
    },
    'code-used': { cause: 'The invitation was used before, or is wrong.', remedy: 'Let the owner make a new one. Each works once.' },
    'no-demo': { cause: 'The box has no demo firing.', remedy: 'Install it anew; nothing of your own is touched.' },
    'too-many-tries': { cause: 'Wrong invitations came too fast.', remedy: 'Wait a minute, then try once more.' },
    'kiln-burns': { cause: 'A firing is going on; this would change it.', remedy: 'Do it when the firing is over.' },
    'storage-failing': {
      cause: 'The box can not write: its disk is full, worn or taken away.',
      remedy: 'Write on paper. Make room, or put in another disk. What waits is stored by itself afterwards.',
    },
    internal: {
      cause: 'The program of the box failed at this.',
      remedy: 'Try again. If it stays, restart the box and keep its log for whoever helps.',
    },
    unreachable: {
      cause: 'No way to the box: its power, its Wi-Fi, or this tablet is on another.',
      remedy: 'Check both. What you log is kept here and sent later.',
    },
  } satisfies Record<ProblemCode | 'unreachable', CauseAndRemedy>,
  refusals: {
    'bad-topic': { cause: 'The topic has not five levels, or signs that are not allowed.', remedy: 'Publish to root/1/site/node/kind.' },
    'other-site': { cause: 'The message is for another place than this.', remedy: 'Write the name of this place in the topic.' },
    'unknown-contract': { cause: 'The second level of the topic is not 1.', remedy: 'Use version 1.' },
    'unknown-kind': { cause: 'The last level of the topic is not known.', remedy: 'Use state, info, readings, backlog or ack.' },
    'too-many-nodes': { cause: 'More nodes were heard than the box takes.', remedy: 'Give a node one name and keep it.' },
    'pack-too-large': { cause: 'The pack is over 64 KiB.', remedy: 'Send smaller packs.' },
    'bad-utf8': { cause: 'The bytes are no UTF-8.', remedy: 'Send UTF-8 without other bytes.' },
    'bad-json': { cause: 'It is no JSON.', remedy: 'Check commas, quotes and the end of the buffer.' },
    nested: { cause: 'A record holds a list or an object.', remedy: 'Only plain values in a record.' },
    'duplicate-name': { cause: 'A label stands twice in one record.', remedy: 'Write each label once.' },
    'unsafe-name': { cause: 'A label is a word that programs reserve.', remedy: 'Use the labels of the wire format.' },
    'not-a-pack': { cause: 'It is neither a list of records nor an object of numbers.', remedy: 'Send a SenML list.' },
    'bad-info': { cause: 'The birth document lacks something it needs.', remedy: 'Send it with fw, hw, boot, clock and channels.' },
    'bad-channel': { cause: 'A channel of the birth document is wrong.', remedy: 'Give it a name n and a unit u.' },
    'bad-state': { cause: 'The state is none of the known words.', remedy: 'Use init, ready, sleeping, disconnected or lost.' },
    'empty-pack': { cause: 'The list has no records.', remedy: 'Send nothing when there is nothing.' },
    'too-many-records': { cause: 'More than 512 records in one pack.', remedy: 'Send smaller packs.' },
    'unknown-label': { cause: 'A label ends in _ and is not known: it must be understood.', remedy: 'Leave it out.' },
    'unknown-version': { cause: 'The SenML version is not understood.', remedy: 'Leave bver out, or send 10.' },
    'bad-base': { cause: 'A base value is no number or no text, as it should be.', remedy: 'Check bn, bt, bu and bv.' },
    'bad-identity': { cause: 'boot, seq or up is no whole number from 0 up.', remedy: 'Send all three with the unit count or s.' },
    conflict: {
      cause: 'Two different packs have the same boot and seq.',
      remedy: 'Count seq up for each pack; take a new boot at each start.',
    },
    'not-a-record': { cause: 'An item of the list is no object.', remedy: 'Send objects only.' },
    'bad-name': { cause: 'A name has signs that are not allowed, or begins wrongly.', remedy: 'Use letters, digits, - : . / and _.' },
    'bad-number': { cause: 'A value is text, or no number at all.', remedy: 'Send numbers without quotes.' },
    'bad-field': { cause: 'A field of a record is of the wrong kind.', remedy: 'Units and names are text, times and values are numbers.' },
    'two-values': { cause: 'A record has two values.', remedy: 'One of v and vs in each record.' },
    'no-value': { cause: 'A record has no value.', remedy: 'Send v, or vs with the fault.' },
    'no-number': { cause: 'The value is true, false or data, not a number.', remedy: 'Send a number.' },
    'foreign-name': { cause: 'The name belongs to another node than the topic.', remedy: 'Begin names with site/node/.' },
    'unknown-name': { cause: 'The rest of the name is no channel.', remedy: 'Use a-z 0-9 - and one / for a cold junction.' },
    'too-many-channels': { cause: 'More channels than a node may have.', remedy: 'Use the same names each time.' },
    'bad-time': {
      cause: 'The time is before 2020 or far ahead.',
      remedy: 'Send times relative to the pack, or set the clock of the node.',
    },
    'no-unit': { cause: 'A reading has no unit.', remedy: 'Send u or bu, Cel for temperatures.' },
    'unknown-unit': { cause: 'The unit is not in the registry of SenML.', remedy: 'Use Cel, K, kg, /, ppm.' },
    'unit-version': {
      cause: 'The unit needs a later SenML version than the pack says.',
      remedy: 'Send the feature bit for secondary units, or the base unit.',
    },
    'wrong-unit': { cause: 'The unit is another than the birth document says.', remedy: 'Make both the same.' },
    'unknown-fault': {
      cause: 'The word of the fault is not known.',
      remedy: 'Use open, short-gnd, short-vcc, range, bus, crc, not-converted or saturated.',
    },
    'out-of-range': { cause: 'No probe can read that.', remedy: 'Check the conversion of the chip, and send a fault in its place.' },
  } satisfies Record<RefusalReason, CauseAndRemedy>,
}

export type ManualWords = typeof en

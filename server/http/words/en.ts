/** The pages on which a tablet is paired stand outside the dashboard, so that they work before anything else does. */
export const pairing = {
  language: 'en',
  /** Said where a machine made the words; empty for those of the house. */
  madeBy: '',
  title: 'Pair this tablet',
  explain: 'One touch, and this browser may look and act here. The link is good once and for a quarter of an hour.',
  button: 'Pair this tablet',
  strangerTitle: 'This browser is not paired yet',
  strangerExplain:
    'Scan the square code that the service prints when it starts, or ask the owner for a link. On the machine itself the page opens at localhost without pairing.',
}
export type PairingWords = typeof pairing

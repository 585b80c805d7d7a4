/** The page on which a tablet is paired stands outside the dashboard, so that it works before anything else does. */
export const pairing = {
  title: 'Pair this tablet',
  explain: 'One touch, and this browser may look and act here. The link is good once and for a quarter of an hour.',
  button: 'Pair this tablet',
}

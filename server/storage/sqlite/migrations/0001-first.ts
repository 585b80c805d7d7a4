/** Every row ends with `sum`, the CRC-32 of the columns before it; the raw points are summed up in their minute (`minute.points`). */
export const first = `
CREATE TABLE journal (
  seq INTEGER PRIMARY KEY, prev INTEGER NOT NULL, at REAL NOT NULL, kind TEXT NOT NULL, kiln TEXT,
  topic TEXT NOT NULL, retained INTEGER NOT NULL, payload BLOB NOT NULL, sum INTEGER NOT NULL);
CREATE TABLE checkpoint (
  name TEXT NOT NULL, seq INTEGER NOT NULL, at REAL NOT NULL, version INTEGER NOT NULL, bytes BLOB NOT NULL, sum INTEGER NOT NULL,
  PRIMARY KEY (name, seq, at));
CREATE TABLE quarantine (
  at REAL NOT NULL, sender TEXT NOT NULL, topic TEXT NOT NULL, reason TEXT NOT NULL, payload BLOB NOT NULL, sum INTEGER NOT NULL,
  UNIQUE (at, sender, topic, reason, sum));
CREATE TABLE output (
  kiln TEXT NOT NULL, cause INTEGER NOT NULL, at REAL NOT NULL, n INTEGER NOT NULL, firing TEXT, json TEXT NOT NULL, sum INTEGER NOT NULL,
  PRIMARY KEY (kiln, cause, at, n));
CREATE INDEX output_of_firing ON output (firing, at) WHERE firing IS NOT NULL;
CREATE TABLE series (id INTEGER PRIMARY KEY, firing TEXT NOT NULL, role TEXT NOT NULL, sum INTEGER NOT NULL, UNIQUE (firing, role));
CREATE TABLE point (series INTEGER NOT NULL, t INTEGER NOT NULL, value REAL, PRIMARY KEY (series, t)) WITHOUT ROWID;
CREATE TABLE minute (
  series INTEGER NOT NULL, start INTEGER NOT NULL, first INTEGER NOT NULL, last INTEGER NOT NULL,
  low REAL, low_at INTEGER, high REAL, high_at INTEGER, null_at INTEGER, count INTEGER NOT NULL, points INTEGER NOT NULL, sum INTEGER NOT NULL,
  PRIMARY KEY (series, start)) WITHOUT ROWID;
CREATE TABLE firing (id TEXT PRIMARY KEY, kiln TEXT NOT NULL, started_at REAL NOT NULL, json TEXT NOT NULL, intake BLOB NOT NULL, sum INTEGER NOT NULL);
CREATE INDEX firing_started ON firing (started_at);
CREATE TABLE document (
  kind TEXT NOT NULL, id TEXT NOT NULL, revision INTEGER NOT NULL, at REAL NOT NULL, by TEXT NOT NULL, json TEXT NOT NULL, sum INTEGER NOT NULL,
  PRIMARY KEY (kind, id, revision));
`

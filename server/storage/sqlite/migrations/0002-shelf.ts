/**
 * `shelf`: each firing as the list needs it, so that a list reads nothing else. `drawn`: the whole curve of a firing that is over, thinned
 * once. Both are made from the other tables where they are missing.
 */
export const shelf = `
CREATE TABLE shelf (firing TEXT PRIMARY KEY, started_at REAL NOT NULL, json TEXT NOT NULL, sum INTEGER NOT NULL) WITHOUT ROWID;
CREATE INDEX shelf_started ON shelf (started_at);
CREATE TABLE drawn (
  firing TEXT PRIMARY KEY, from_at REAL NOT NULL, to_at REAL NOT NULL, readings INTEGER NOT NULL, curve BLOB NOT NULL, sum INTEGER NOT NULL);
`

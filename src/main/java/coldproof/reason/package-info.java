/** The deciding rooms: each takes what was decided, recorded and measured, and returns a record. Pure; no room here reads or writes. */
package coldproof.reason;

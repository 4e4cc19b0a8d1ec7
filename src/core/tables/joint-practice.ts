/**
 * When the joints of a finished run want a look. Common practice, no standard, from memory: a sound crimp or contact of a
 * power lead has well under 1 milliohm and a blade fuse with its holder 2 to 6, so that a run with 5 milliohms more than
 * its wire and its planned joints has one that is bad.
 */
export const EXCESS_MILLIOHMS = 5;

/**
 * Share by which the wire itself may differ from what is computed for it. Common practice, from memory: the lay of the
 * strands adds about 2 %, and 8 degC of doubt about the conductor's temperature 3 %.
 */
export const WIRE_DOUBT_SHARE = 0.05;

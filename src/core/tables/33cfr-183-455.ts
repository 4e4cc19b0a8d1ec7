/**
 * 33 CFR 183.455(c), the public rule for fuses and breakers in boats; read in a reproduction of the regulation. Under
 * 50 V the rating is at most 150 % of the conductor's current of table 5; from 50 V on at most that current (the next
 * standard rating within 150 %, which it allows as well, is not used here).
 */
export const CRAFT_FUSE_MOST_SHARE = 1.5;
export const CRAFT_FUSE_SHARE_BELOW_V = 50;

/** Pixels of the icons that Office asks for: 16 to 80 on the ribbon, 32 and 64 in lists of add-ins, 128 for later. */
export const ICON_SIZES_PX = [16, 32, 64, 80, 128] as const;

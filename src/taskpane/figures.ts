/** Figures as the pane writes them. */

/** So many digits that two figures that differ can be told apart, without zeros at the end. */
export const digits = (value: number, count: number) => String(Number(value.toPrecision(count)));

export const kilograms = (kg: number) => `${digits(kg, 4)} kg`;
/** Money in the user's own; a price list says no currency. */
export const money = (cost: number) => cost.toFixed(2);
export const percent = (share: number, count = 3) => `${digits(share * 100, count)} %`;

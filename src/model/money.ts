export type { Currency, Decimal } from "../units/money.ts";

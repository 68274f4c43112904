import type { AskAnswer } from "../asks.js";
import type { Measured } from "../measure.js";
import { askRows } from "../report/asks-text.js";

/** The knife balances so far ahead of its heel; behind it the figure has a minus. */
export const BALANCE = "balance from the heel (ahead +)";

/** What was asked, what was computed, the verdict; of the balance also where it is measured from. */
export const cardAskRows = (answers: readonly AskAnswer[], units: Measured["job"]["units"]): string[][] =>
  askRows(answers, units).map(([name = "", ...rest], index) => [
    answers[index]?.ask.name === "balance" ? name.replace("balance", BALANCE) : name,
    ...rest,
  ]);

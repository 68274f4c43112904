import type { AskAnswer } from "../asks.js";
import type { Measured } from "../measure.js";
import { askRows } from "../report/asks-text.js";

/** The knife balances so far ahead of its heel; behind it the figure has a minus. */
export const BALANCE = "balance from the heel (ahead +)";

/** Beside the title of what was asked, whose columns have no room for it: where a balance is measured from. */
export const askedOf = (answers: readonly AskAnswer[]): string =>
  answers.some(({ ask }) => ask.name === "balance")
    ? "finished knife; balance from the heel, ahead +"
    : "finished knife";

/** What the finished knife is held against; of the balance also where it is measured from. */
export const madeAskRows = (answers: readonly AskAnswer[], units: Measured["job"]["units"]): string[][] =>
  askRows(answers, units).map(([name = "", ...rest], index) => [
    answers[index]?.ask.name === "balance" ? name.replace("balance", BALANCE) : name,
    ...rest,
  ]);

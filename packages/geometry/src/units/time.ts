import { formatNumber, roundHalves } from "./number-text.js";

const MINUTE = 60;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/**
 * A time for the reader: hours and minutes, whole days from two days on.
 *
 * @param seconds - Shown to a minute.
 *
 * @example
 * formatTime(5400); // "1 h 30 min"
 * formatTime(72 * 3600); // "3 days"
 */
export function formatTime(seconds: number): string {
  const sign = seconds < 0 ? "−" : "";
  const minutes = roundHalves(Math.abs(seconds) / MINUTE);
  const whole = minutes * MINUTE;
  if (whole >= 2 * DAY && whole % DAY === 0) return `${sign}${formatNumber(whole / DAY, 1)} days`;
  const [hours, rest] = [Math.floor(whole / HOUR), (whole % HOUR) / MINUTE];
  if (hours === 0) return `${minutes === 0 ? "" : sign}${rest} min`;
  return rest === 0 ? `${sign}${hours} h` : `${sign}${hours} h ${rest} min`;
}

/** Currencies whose smallest coin is not a hundredth: decimals of an amount (ISO 4217, from memory). */
const DECIMALS: Readonly<Record<string, number>> = {
  ...Object.fromEntries(
    ["CLP", "ISK", "JPY", "KRW", "PYG", "UGX", "VND", "VUV", "XAF", "XOF", "XPF"].map((code) => [code, 0]),
  ),
  ...Object.fromEntries(["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"].map((code) => [code, 3])),
};

/**
 * Decimals that an amount of a currency has: 2 where nothing else is known.
 *
 * @param currency - As the shop file names it; only the codes of ISO 4217 are known.
 *
 * @example
 * currencyDecimals("EUR"); // 2
 * currencyDecimals("JPY"); // 0
 */
export const currencyDecimals = (currency: string | undefined): number =>
  DECIMALS[currency?.trim().toUpperCase() ?? ""] ?? 2;

/**
 * An amount in its smallest coin, to the nearest whole one, halves up.
 *
 * @example
 * toMinor(12.345, 2); // 1235
 */
export const toMinor = (amount: number, decimals: number): number =>
  // A double's last digit is no part of a coin: 1.005 is meant where 1.00499… stands.
  Math.floor(amount * 10 ** decimals + 0.5 + 1e-7);

/**
 * An amount of smallest coins for the reader.
 *
 * @example
 * minorText(123405, 2); // "1234.05"
 * minorText(-5, 2); // "−0.05"
 */
export function minorText(minor: number, decimals: number): string {
  const digits = String(Math.abs(minor)).padStart(decimals + 1, "0");
  const whole = digits.slice(0, digits.length - decimals);
  const sign = minor < 0 ? "−" : "";
  return decimals === 0 ? `${sign}${whole}` : `${sign}${whole}.${digits.slice(-decimals)}`;
}

import { minorUnits, moneyText, readMoney, sumMoney, timesMoney } from "@plumbmark/core";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";

describe("minor units of ISO 4217", () => {
  // ECMA-402, CurrencyDigits: "the minor unit value corresponding to the currency" of ISO 4217. Where the runtime's data
  // rounds to what is paid in cash, as it does for some currencies without coins, the standard's own table counts.
  const PAID_IN_WHOLE = [
    "AFN",
    "ALL",
    "AMD",
    "COP",
    "CRC",
    "GYD",
    "HUF",
    "IDR",
    "IQD",
    "IRR",
    "KPW",
    "LAK",
    "LBP",
    "MGA",
    "MMK",
    "MUR",
    "PKR",
    "RSD",
    "SLL",
    "SOS",
    "STD",
    "SYP",
    "TMM",
    "TZS",
    "UZS",
    "YER",
    "ZMK",
  ];

  const digits = (currency: string): number | undefined =>
    new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits;

  // Active codes of the standard with another number of digits than two, and some with two.
  test.each([
    "USD",
    "EUR",
    "GBP",
    "JPY",
    "KRW",
    "ISK",
    "CLP",
    "VND",
    "XOF",
    "BHD",
    "KWD",
    "JOD",
    "TND",
    "OMR",
    "CLF",
    "CHF",
  ])("of %s", (currency) => {
    expect(PAID_IN_WHOLE).not.toContain(currency);
    expect(minorUnits(currency)).toBe(digits(currency));
  });
});

describe("amounts", () => {
  test("are read as they are written, and exactly", () => {
    expect(readMoney("412.00 USD")).toEqual({ minor: 41200n, currency: "USD" });
    expect(readMoney("412 USD")).toEqual({ minor: 41200n, currency: "USD" });
    expect(readMoney("0.5 EUR")).toEqual({ minor: 50n, currency: "EUR" });
    expect(readMoney("1500 JPY")).toEqual({ minor: 1500n, currency: "JPY" });
    expect(readMoney("1.234 BHD")).toEqual({ minor: 1234n, currency: "BHD" });
  });

  test.each(["412,00 USD", "412.001 USD", "15.5 JPY", "$412", "412", "412 usd", "-4 USD", "1e3 USD", ""])(
    "`%s` is none",
    (text) => expect(readMoney(text)).toBeUndefined(),
  );

  test("a tenth of a dollar three times is thirty cents, as it is not in binary", () => {
    const tenth = readMoney("0.10 USD");
    if (!tenth) throw new Error("it can be read");
    expect(moneyText(timesMoney(tenth, 3))).toBe("0.30");
    expect(0.1 * 3).not.toBe(0.3);
  });

  test("of two currencies are two sums", () => {
    const all = ["1.50 USD", "2.00 EUR", "0.75 USD"].flatMap((text) => readMoney(text) ?? []);
    expect(notEmpty(sumMoney(all)).map((sum) => `${moneyText(sum)} ${sum.currency}`)).toEqual(["2.00 EUR", "2.25 USD"]);
  });

  test("sums are those of whole cents", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 99_999_999 }), { minLength: 1 }), (cents) => {
        const all = cents.map((each) => {
          const read = readMoney(`${Math.floor(each / 100)}.${String(each % 100).padStart(2, "0")} USD`);
          if (!read) throw new Error("it can be read");
          return read;
        });
        const sum = cents.reduce((total, each) => total + BigInt(each), 0n);
        expect(sumMoney(all)).toEqual([{ minor: sum, currency: "USD" }]);
      }),
    );
  });
});

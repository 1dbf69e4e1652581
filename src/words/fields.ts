// Names of the fields of a tabled value, as they are read aloud: the evidence has them as its files are written ('cubicFeet',
// 'powder35To0.5GramsPerLitre'), and nobody at a bedside should have to.

/** 'cubic feet', 'powder 35 to 0.5 grams per litre'. Names of one piece (`e12`, `ms2`, `K1`) stay as they are. */
export const fieldInWords = (name: string): string =>
  /[a-z0-9][A-Z]|[a-z]{5}\d/.test(name)
    ? name.replaceAll(/(?<=[a-z])(?=\d)|(?<=[a-z0-9])(?=[A-Z])/g, ' ').toLowerCase()
    : name;

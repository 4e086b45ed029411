import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inches } from '#shared/units/length.ts'
import { LONGEST_LENGTH_TEXT, parseLength, readLength } from '#shared/units/parse-length.ts'
import { anyLetter } from '#tests/support/any-letter.ts'
import { units } from '#tests/support/inputs.ts'

describe('as makers write it', () => {
  test.each([
    ['5/8', 15.875],
    ['1 3/16', 30.1625],
    ['1-3/16', 30.1625],
    ['1-3/16"', 30.1625],
    ['2 1/2 in', 63.5],
    ['2 1/2in', 63.5],
    ['16 mm', 16],
    ['16mm', 16],
    ['16 MM', 16],
    ['0.3 mm', 0.3],
    ['1½', 38.1],
    ['1 ½', 38.1],
    ['1-½', 38.1],
    ['½', 12.7],
    ['⅝″', 15.875],
    ['⅝”', 15.875],
    ["5/8''", 15.875],
    ['5⁄8', 15.875],
    ['5∕8', 15.875],
    ['1–3/16', 30.1625],
    ['.5', 12.7],
    ['0.625', 15.875],
    ['0.625 inches', 15.875],
    ['1 inch', 25.4],
    ['12.7 millimetres', 12.7],
    ['12.7 millimeter', 12.7],
    ['  5/8  ', 15.875],
    ['1\u00a03/16', 30.1625],
    ['1\t3/16', 30.1625],
    ['10/8', 31.75],
    ['0', 0],
    ['-5/8', -15.875],
    ['-1 3/16 in', -30.1625],
    ['−16 mm', -16],
  ])('%j, in inches unless it says otherwise', (text, length) => {
    expect(parseLength(text, 'in')).toEqual({ ok: true, value: length })
  })

  test('every sign for a fraction is that fraction', () => {
    const signs = {
      '½': [1, 2],
      '⅓': [1, 3],
      '⅔': [2, 3],
      '¼': [1, 4],
      '¾': [3, 4],
      '⅕': [1, 5],
      '⅖': [2, 5],
      '⅗': [3, 5],
      '⅘': [4, 5],
      '⅙': [1, 6],
      '⅚': [5, 6],
      '⅛': [1, 8],
      '⅜': [3, 8],
      '⅝': [5, 8],
      '⅞': [7, 8],
    }
    for (const [sign, [top = 0, bottom = 1]] of Object.entries(signs)) {
      expect(parseLength(sign, 'mm')).toEqual({ ok: true, value: top / bottom })
      expect(parseLength(`3${sign}`, 'mm')).toEqual({ ok: true, value: (3 * bottom + top) / bottom })
    }
  })

  test('a unit in the text wins', () => {
    expect(parseLength('1 in', 'mm')).toEqual({ ok: true, value: 25.4 })
    expect(parseLength('1 mm', 'in')).toEqual({ ok: true, value: 1 })
    expect(parseLength('1', 'mm')).toEqual({ ok: true, value: 1 })
  })
})

describe('refused', () => {
  test.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['1,5', 'comma'],
    ['1,000.5', 'comma'],
    ['+5/8', 'sign'],
    ['--5/8', 'sign'],
    ['- 5/8', 'sign'],
    ['1e3', 'exponent'],
    ['1e-3 mm', 'exponent'],
    ['0x10', 'exponent'],
    ["5'", 'feet'],
    ['2 ft', 'feet'],
    ['1\' 3"', 'feet'],
    ['1/0', 'zero-denominator'],
    ['1 1/0', 'zero-denominator'],
    ['0/0', 'zero-denominator'],
    ['1 5/4', 'improper-mixed'],
    ['1 4/4', 'improper-mixed'],
    ['1/2/3', 'not-a-length'],
    ['1//2', 'not-a-length'],
    ['1 2 3/4', 'not-a-length'],
    ['1--3/16', 'not-a-length'],
    ['1  3/16', 'not-a-length'],
    ['1.5/2', 'not-a-length'],
    ['1.2.3', 'not-a-length'],
    ['.', 'not-a-length'],
    ['1.', 'not-a-length'],
    ['/', 'not-a-length'],
    ['5/', 'not-a-length'],
    ['5 cm', 'not-a-length'],
    ['mm', 'not-a-length'],
    ['NaN', 'not-a-length'],
    ['Infinity', 'not-a-length'],
    ['null', 'not-a-length'],
    ['__proto__', 'not-a-length'],
    // once taken for a unit, as every object knows the word
    ['1 constructor', 'not-a-length'],
    ['½½', 'not-a-length'],
    ['1/½', 'not-a-length'],
    ['5/8 5/8', 'not-a-length'],
    ['٥/٨', 'not-a-length'],
    ['５/８', 'not-a-length'],
    ['5/8\u0000', 'not-a-length'],
    ['5\n/8', 'not-a-length'],
    ['1234567890123', 'too-many-digits'],
    ['0.1234567890123', 'too-many-digits'],
    ['123456 1234/5678', 'too-many-digits'],
    ['1'.repeat(LONGEST_LENGTH_TEXT + 1), 'too-long'],
  ])('%j: %s', (text, fault) => {
    expect(parseLength(text, 'in')).toEqual({ ok: false, error: fault })
  })

  test('a text of two million signs, unread', () => {
    expect(parseLength('1/'.repeat(1_000_000), 'in')).toEqual({ ok: false, error: 'too-long' })
  })

  // ½1 was once read as 1/21: the sign turned into 1/2 and the digit after it joined its denominator.
  test.each(['½1', '½0', '⅛2 mm', '3½4', '½5/8', '1 ½2'])('%s: no fraction sign runs on into digits', (text) => {
    expect(parseLength(text, 'in').ok).toBe(false)
  })
})

describe('to the last digit', () => {
  const whole = fc.integer({ min: 0, max: 9999 })

  test('a fraction of inches is the one nearest double, and the same as its decimal', () => {
    fc.assert(
      fc.property(
        whole,
        fc.integer({ min: 0, max: 127 }),
        fc.constantFrom(2, 4, 8, 16, 32, 64, 128),
        (inch, top, bottom) => {
          fc.pre(top < bottom)
          const length = (inch * bottom + top) / bottom
          expect(parseLength(`${inch} ${top}/${bottom}`, 'in')).toEqual({ ok: true, value: inches(length) })
          expect(parseLength(`${inch}-${top}/${bottom}"`, 'mm')).toEqual({ ok: true, value: inches(length) })
          expect(parseLength(`${length}`, 'in')).toEqual({ ok: true, value: inches(length) })
        },
      ),
    )
  })

  test('a decimal of millimetres is what JSON would read', () => {
    fc.assert(
      fc.property(whole, fc.integer({ min: 0, max: 9_999_999 }), (before, after) => {
        const text = `${before}.${String(after).padStart(7, '0')}`
        expect(parseLength(text, 'mm')).toEqual({ ok: true, value: Number(text) })
      }),
    )
  })

  test('nothing is rounded before the end: whole numbers, and the text’s own unit', () => {
    expect(readLength('1 3/16 in')).toEqual({ ok: true, value: { numerator: 19, denominator: 16, units: 'in' } })
    expect(readLength('-0.0625')).toEqual({
      ok: true,
      value: { numerator: -625, denominator: 10_000, units: undefined },
    })
    expect(readLength('999999999999 mm')).toEqual({
      ok: true,
      value: { numerator: 999_999_999_999, denominator: 1, units: 'mm' },
    })
  })
})

test('any text at all gives a finite length or a reason, and never a throw', () => {
  const signs = fc.constantFrom(...'0123456789 /-.,½⅝″\'"inmx+eft−⁄\u00a0\u0301')
  const text = fc.oneof(fc.string({ unit: anyLetter, maxLength: 60 }), fc.string({ unit: signs, maxLength: 20 }))
  fc.assert(
    fc.property(text, units, (said, of) => {
      const read = parseLength(said, of)
      expect(read.ok ? Number.isFinite(read.value) : read.error.length > 0).toBe(true)
    }),
    { numRuns: 2000 },
  )
})

// A pattern that tries one way after another would not come to an end.
test('the longest text is refused or read, whatever it repeats', () => {
  for (const bit of ['1', '1 ', '1/', '-', '½', '.', "'", ' ', '1½', '11 1/', '\u0301']) {
    const read = readLength(bit.repeat(LONGEST_LENGTH_TEXT).slice(0, LONGEST_LENGTH_TEXT))
    expect(read.ok || read.error.length > 0).toBe(true)
  }
})

// Reads a number as people write it, with or without its unit. Nothing is ever evaluated: a grammar of our own.
//
// studyNumbers.read(text) → {kind: 'empty' | 'range' | 'none'} or {kind: 'number', values, unit}: one value, or two where
// a comma may mark decimals or thousands; `unit` is the text behind the number, possibly empty.
// studyNumbers.factor(typed, wanted) → {factor, offset} with value in wanted = value typed × factor + offset;
// null where the typed unit is known but measures something else; undefined where it is not known.
(function () {
  'use strict'
  const POWERS = { '⁰': 0, '¹': 1, '²': 2, '³': 3, '⁴': 4, '⁵': 5, '⁶': 6, '⁷': 7, '⁸': 8, '⁹': 9, '⁻': '-' }
  const TIMES_TEN = '(?:\\s*[x×*·⋅]\\s*10\\s*(?:\\^|\\*\\*)?\\s*\\(?([+-]?\\d{1,3})\\)?(?!\\d))'
  const DIGITS = '(?:\\d+[.,])*\\d+|[.,]\\d+'
  const NUMBER = new RegExp(`^([+-]?)\\s*(?:(${DIGITS})(?:e([+-]?\\d{1,3})(?![\\d.,])|${TIMES_TEN})?)`, 'i')
  const FRACTION = /^([+-]?)\s*(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)(?![\d.,])/
  const RANGE = new RegExp(`^[+-]?(?:${DIGITS})\\s*(?:-|–|\\.{3}|…|(?:[A-Za-z°%µ/]+\\s+)?(?:to|until|and|or)\\s)\\s*(?:${DIGITS})`, 'i')

  function normalized (typed) {
    return typed
      .replace(/[⁻⁰¹²³⁴-⁹]+/g, found => '^' + [...found].map(sign => POWERS[sign]).join(''))
      .normalize('NFKC').trim()
      .replace(/[−–‒]/g, '-')
      .replace(/μ/g, 'µ')
      .replace(/^.*=\s*(?=\S)/s, '')
      .replace(/^(≈|~|ca\.?|about|approx\.?|approximately|roughly|=)\s*/i, '')
      .replace(/(\d)[ \u00a0\u2009\u202f'’](?=\d{3}(?!\d))/g, '$1')
  }

  function read (typed) {
    const text = normalized(typed)
    if (!text) return { kind: 'empty' }
    if (RANGE.test(text)) return { kind: 'range' }
    const fraction = FRACTION.exec(text)
    if (fraction) {
      const [all, sign, whole = '0', over, under] = fraction
      const value = Number(whole) + Number(over) / Number(under)
      return finished([Number(under) ? Number(sign + value) : NaN], text.slice(all.length))
    }
    const found = NUMBER.exec(text)
    if (!found) return { kind: 'none' }
    const [all, sign, digits, power, ten] = found
    const exponent = power || ten ? `e${power || ten}` : ''
    return finished(decimals(digits).map(plain => Number(sign + plain + exponent)), text.slice(all.length))
  }

  function finished (values, rest) {
    const unit = rest.trim()
    const numbers = values.filter(Number.isFinite)
    const isUnit = !unit || /^(?:[A-Za-z°%‰µ(]|\/\s*[A-Za-z])[A-Za-z0-9°%‰µ\s^*·⋅/()-]*$/.test(unit)
    return numbers.length && isUnit ? { kind: 'number', values: numbers, unit } : { kind: 'none' }
  }

  // The plain spellings that a string of digits may stand for: none, one or two.
  function decimals (digits) {
    const commas = digits.split(',').length - 1
    const points = digits.split('.').length - 1
    if (commas === 0 && points <= 1) return [digits]
    if (commas && points) {
      const mark = digits.lastIndexOf(',') > digits.lastIndexOf('.') ? ',' : '.'
      const [whole, rest, more] = digits.split(mark)
      return more === undefined && grouped(whole) ? [whole.replace(/[.,]/g, '') + '.' + rest] : []
    }
    if (commas === 1) {
      const asDecimal = digits.replace(',', '.')
      return /^[1-9]\d{0,2},\d{3}$/.test(digits) ? [asDecimal, digits.replace(',', '')] : [asDecimal]
    }
    return grouped(digits) ? [digits.replace(/[.,]/g, '')] : []
  }

  function grouped (digits) {
    return /^\d{1,3}([.,])\d{3}(\1\d{3})*$/.test(digits) || /^\d+$/.test(digits)
  }

  // Units: what each measures, and its size. A test compares every line with the units that records may use.
  const L = 'length'
  const M = 'mass'
  const T = 'time'
  const E = 'energy'
  const N = 'amount'
  const SIZES = {
    nm: [L, 1e-9], um: [L, 1e-6], mm: [L, 1e-3], cm: [L, 1e-2], m: [L, 1], km: [L, 1e3], in: [L, 0.0254], ft: [L, 0.3048],
    ha: [L, 1e4, 2], mL: [L, 1e-6, 3], L: [L, 1e-3, 3],
    ng: [M, 1e-9], ug: [M, 1e-6], mg: [M, 1e-3], g: [M, 1], kg: [M, 1e3], t: [M, 1e6], kt: [M, 1e9], Mt: [M, 1e12], Gt: [M, 1e15],
    Gg: [M, 1e9], Tg: [M, 1e12], Pg: [M, 1e15],
    s: [T, 1], min: [T, 60], h: [T, 3600], d: [T, 86400], yr: [T, 31557600],
    K: ['temperature', 1], degC: ['temperature', 1], degF: ['temperature', 5 / 9],
    J: [E, 1], kJ: [E, 1e3], MJ: [E, 1e6], GJ: [E, 1e9], cal: [E, 4.184], kcal: [E, 4184], W: [E, 1, 1, T, -1],
    Pa: ['pressure', 1], hPa: ['pressure', 100],
    umol: [N, 1e-6], mmol: [N, 1e-3], mol: [N, 1], individuals: ['individuals', 1], deg: ['angle', 1],
    percent: [null, 1e-2], permille: [null, 1e-3], ppm: [null, 1e-6], ppb: [null, 1e-9]
  }
  const SUBSTANCES = new Set('C N P S CO2 CH4 O2 H2O N2O NH3 NH4 NO3 PO4'.split(' '))
  const WORDS = {
    '%': 'percent', '‰': 'permille', '°C': 'degC', '°F': 'degF', '°': 'deg', 'µm': 'um', 'µg': 'ug', 'µmol': 'umol', l: 'L', ml: 'mL',
    a: 'yr', y: 'yr', year: 'yr', years: 'yr', yrs: 'yr', day: 'd', days: 'd', hour: 'h', hours: 'h', hr: 'h', hrs: 'h', minute: 'min',
    minutes: 'min', second: 's', seconds: 's', sec: 's', tonne: 't', tonnes: 't', hectare: 'ha', hectares: 'ha', inch: 'in', inches: 'in',
    foot: 'ft', feet: 'ft', individual: 'individuals', degree: 'deg', degrees: 'deg', celsius: 'degC', fahrenheit: 'degF', kelvin: 'K',
    kelvins: 'K', Kg: 'kg', KG: 'kg', kj: 'kJ', KJ: 'kJ', Ha: 'ha', carbon: 'C', nitrogen: 'N', phosphorus: 'P', oxygen: 'O2', dry: '', matter: '', mass: '', of: ''
  }
  const PREFIXES = { nano: 'n', micro: 'u', milli: 'm', centi: 'c', hecto: 'h', kilo: 'k', mega: 'M', giga: 'G', tera: 'T', peta: 'P', '': '' }
  const STEMS = { metre: 'm', meter: 'm', gram: 'g', gramme: 'g', litre: 'L', liter: 'L', joule: 'J', calorie: 'cal', watt: 'W', pascal: 'Pa', mole: 'mol', tonne: 't' }
  const RAISED = { square: 2, squared: 2, sq: 2, cubic: 3, cubed: 3 }

  function named (word) {
    if (word in SIZES || SUBSTANCES.has(word)) return word
    const low = word.toLowerCase()
    if (word in WORDS) return WORDS[word]
    if (low in WORDS && low.length > 2) return WORDS[low]
    const found = /^(nano|micro|milli|centi|hecto|kilo|mega|giga|tera|peta|)(metre|meter|gramme|gram|litre|liter|joule|calorie|watt|pascal|mole|tonne)s?$/.exec(low)
    const short = found && PREFIXES[found[1]] + STEMS[found[2]]
    return short && short in SIZES ? short : undefined
  }

  // The powers of what a unit measures, its size, and its substance; undefined where a word is not known.
  function parsed (typed) {
    const text = typed.normalize('NFKC').replace(/μ/g, 'µ').replace(/[−–]/g, '-').replace(/[()]/g, ' ').replace(/[·⋅]/g, ' ').replace(/\*(?!\*)(?!\d)/g, ' ')
      .replace(/\bparts? per (m|b)illion\b/gi, (_, m) => (m.toLowerCase() === 'm' ? 'ppm' : 'ppb')).replace(/\bper\s?(cent|mille)\b/gi, (_, m) => (m.toLowerCase() === 'cent' ? '%' : '‰'))
      .replace(/\bdeg(?:rees?)?\s*(C|F|celsius|fahrenheit)\b/gi, (_, m) => `°${m[0].toUpperCase()}`).replace(/\bper\b/gi, '/').replace(/°\s+(?=[CF]\b)/g, '°')
    const powers = {}
    const substances = []
    let size = 1
    let factors = 0
    let last = ''
    for (const [index, part] of text.split('/').entries()) {
      let raise = 1
      for (const word of part.trim().split(/\s+/).filter(Boolean)) {
        if (word === '1' && !index) continue
        if (word.toLowerCase() in RAISED) {
          raise = RAISED[word.toLowerCase()]
          continue
        }
        const bare = named(word)
        const found = bare === undefined && /^([A-Za-z°%‰µ]+?)(?:\^|\*\*)?([+-]?\d)?$/.exec(word)
        const name = found ? named(found[1]) : bare
        if (name === '') continue
        if (name === undefined) return undefined
        if (SUBSTANCES.has(name)) {
          substances.push(name)
          continue
        }
        const power = Number((found && found[2]) || raise) * (index ? -1 : 1)
        const [kind, one, of = 1, also, alsoOf] = SIZES[name]
        if (kind) powers[kind] = (powers[kind] || 0) + power * of
        if (also) powers[also] = (powers[also] || 0) + power * alsoOf
        size *= one ** power
        factors += 1
        last = name
        raise = 1
      }
    }
    const kind = Object.keys(powers).filter(name => powers[name]).sort().map(name => name + powers[name]).join(' ')
    return { kind, substance: substances.sort().join(' '), size, alone: factors === 1 ? last : '' }
  }

  function factor (typed, wanted) {
    let unit = typed
    if (/^°?[cf]$/i.test(typed) && /^(°C|°F|K)$/.test(wanted)) unit = `°${typed.slice(-1).toUpperCase()}`
    const from = parsed(unit)
    const to = parsed(wanted)
    if (!from || !to) return undefined
    if (from.kind !== to.kind || (from.substance && from.substance !== to.substance)) return null
    const zero = { degC: 273.15, degF: 459.67 * 5 / 9, K: 0 }
    const isReading = to.alone === 'degC' || to.alone === 'degF'
    const offset = isReading && from.alone in zero ? (zero[from.alone] - zero[to.alone]) / to.size : 0
    return { factor: from.size / to.size, offset }
  }

  window.studyNumbers = { read, factor }
})()

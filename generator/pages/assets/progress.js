// What was practised, on this device only: nothing is ever sent. Kept in localStorage where there is one, else until the
// page is left. Each item has a box: a right answer moves it one box on, a wrong one back to the first; boxes come again
// after growing gaps. Right answers come back too, for recalling what is known keeps it known.
//
// studyProgress: note(question, right, sure, slip), item(question), due(questions, today, test), plan(wait), slips(), isKept(),
// forget(), exported(), imported(text), code(records, items), applied(code, records, items), remembered(name, value).
(function () {
  'use strict'
  const KEY = 'study-progress'
  const GAPS = [0, 1, 2, 4, 8, 16, 32] // days, by box
  const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ' // no I, L, O, U: read aloud and typed without mistakes
  const LEVELS = 4 // new, begun, half, solid
  let kept = true
  let state = load()

  function empty () {
    return { version: 1, items: {}, slips: {}, notes: {} }
  }

  function load () {
    try {
      return checked(JSON.parse(localStorage.getItem(KEY))) || empty()
    } catch {
      kept = canKeep()
      return empty()
    }
  }

  function canKeep () {
    try {
      localStorage.setItem(KEY + '-try', '1')
      localStorage.removeItem(KEY + '-try')
      return true
    } catch {
      return false
    }
  }

  // A state as this page writes it, or null: what comes out of a file may be anything.
  function checked (found) {
    if (!found || typeof found !== 'object' || found.version !== 1) return null
    const clean = empty()
    for (const [name, item] of Object.entries(found.items || {})) {
      const [box, day, times, wrong] = Array.isArray(item) ? item : []
      if ([box, day, times, wrong].every(Number.isInteger) && box >= 0 && box < GAPS.length) clean.items[name] = [box, day, times, wrong]
    }
    for (const [name, times] of Object.entries(found.slips || {})) if (Number.isInteger(times)) clean.slips[name] = times
    for (const [name, note] of Object.entries(found.notes || {})) clean.notes[name] = note
    return clean
  }

  function save () {
    try {
      localStorage.setItem(KEY, JSON.stringify(state))
      kept = true
    } catch {
      kept = false
    }
    document.dispatchEvent(new CustomEvent('study-progress'))
  }

  // The day as a number that grows by one at midnight here.
  function today () {
    const now = new Date()
    return Math.floor((now.getTime() - now.getTimezoneOffset() * 60000) / 86400000)
  }

  function note (question, right, sure = '', slip = '') {
    const [box, , times, wrong] = state.items[question] || [0, 0, 0, 0]
    const next = right ? Math.min(box + (sure === 'guess' ? 0 : 1), GAPS.length - 1) : 0
    state.items[question] = [next, today() + Math.max(GAPS[next], 1), times + 1, wrong + (right ? 0 : 1)]
    if (slip) state.slips[slip] = (state.slips[slip] || 0) + 1
    save()
  }

  const item = question => state.items[question] || null
  const answered = ([box, day]) => day - Math.max(GAPS[box], 1)

  // The questions that are due on a day; before a test on day `test` everything comes once more on its eve at the latest.
  function due (questions, day = today(), test = null) {
    const eve = test !== null && day < test ? test - 1 : Infinity
    const when = item => Math.min(item[1], Math.max(eve, answered(item) + 1))
    return questions.filter(name => state.items[name] && when(state.items[name]) <= day)
  }

  // The days, counted from today, on which to practise for a test in `wait` days. The first comes after a fifth of a wait of
  // weeks and a twentieth of a year's (Cepeda and others 2008); gaps grow, and the last day is the eve.
  function plan (wait) {
    if (wait < 1) return []
    const eve = wait - 1
    const share = wait <= 60 ? 0.2 : Math.max(0.05, 0.2 - 0.15 * (wait - 60) / 305)
    let gap = Math.max(1, Math.round(wait * share))
    const days = []
    for (let day = gap; day < eve; day += gap) {
      days.push(day)
      gap = Math.ceil(gap * 1.5)
    }
    const before = days.length > 1 ? days[days.length - 1] - days[days.length - 2] : days[0]
    if (days.length && eve - days[days.length - 1] < before) days.pop()
    return [...days, eve]
  }

  function forget () {
    state = empty()
    try {
      localStorage.removeItem(KEY)
    } catch {}
    document.dispatchEvent(new CustomEvent('study-progress'))
  }

  function imported (text) {
    let found = null
    try {
      found = checked(JSON.parse(text))
    } catch {}
    if (!found) return null
    state = found
    save()
    return Object.keys(state.items).length
  }

  // How far a record is: 0 nothing answered, 1 begun, 2 half of it known, 3 solid.
  function level (questions) {
    const boxes = questions.map(name => (state.items[name] || [0])[0])
    const known = boxes.filter(box => box >= 2).length
    if (known >= 0.9 * questions.length) return 3
    if (known >= 0.5 * questions.length) return 2
    return questions.some(name => state.items[name]) ? 1 : 0
  }

  // The code: how far each record is, two bits each, in letters, behind a mark of this edition and of typing mistakes.
  function code (records) {
    const digits = records.map(one => level(one.questions))
    const letters = []
    for (let start = 0; start < digits.length; start += 5) {
      const part = digits.slice(start, start + 5)
      const number = part.reduce((sum, digit, place) => sum + digit * LEVELS ** place, 0)
      letters.push(LETTERS[number % 32], LETTERS[Math.floor(number / 32)])
    }
    const body = letters.join('').replace(/0+$/, '')
    return grouped(LETTERS[sum(names(records))] + LETTERS[sum(body)] + body)
  }

  function applied (typed, records) {
    const text = typed.toUpperCase().replace(/O/g, '0').replace(/[IL]/g, '1').replace(/[^0-9A-Z]/g, '')
    const body = text.slice(2)
    if (text.length < 2 || [...text].some(letter => !LETTERS.includes(letter)) || text[1] !== LETTERS[sum(body)]) return 'mistyped'
    if (text[0] !== LETTERS[sum(names(records))]) return 'other edition'
    records.forEach((one, index) => {
      const place = Math.floor(index / 5) * 2
      const number = LETTERS.indexOf(body[place] || '0') + 32 * LETTERS.indexOf(body[place + 1] || '0')
      reach(one.questions, Math.floor(number / LEVELS ** (index % 5)) % LEVELS)
    })
    save()
    return 'applied'
  }

  // Brings the questions of a record up to a level, and none of them down.
  function reach (questions, wanted) {
    const share = [0, 0, 0.5, 1][wanted]
    questions.forEach((name, index) => {
      const [box, day, times, wrong] = state.items[name] || [0, 0, 0, 0]
      const least = index < Math.ceil(share * questions.length) ? 2 : wanted && index === 0 ? 1 : 0
      if (least > box) state.items[name] = [least, today() + GAPS[least], Math.max(times, 1), wrong]
    })
  }

  const names = records => records.map(one => one.record).join(' ')
  const grouped = text => text.replace(/(.{4})(?=.)/g, '$1-')

  function sum (text) {
    return [...text].reduce((total, letter) => (total * 31 + letter.codePointAt(0)) % 997, 7) % 32
  }

  function remembered (name, value) {
    if (value === undefined) return state.notes[name]
    if (value === null) delete state.notes[name]
    else state.notes[name] = value
    save()
  }

  // Another page of this site, open beside this one, has kept something: what it knows is not overwritten.
  addEventListener('storage', event => { if (event.key === KEY) state = load() })

  document.addEventListener('self-check-answered', event => {
    const { question, right, sure, slip } = event.detail
    note(question, right, sure, slip)
  })

  window.studyProgress = {
    note, item, due, plan, today, level, forget, imported, code, applied, remembered,
    isKept: () => kept, slips: () => ({ ...state.slips }), exported: () => JSON.stringify(state)
  }
})()

// <practice-desk>: mixed practice on one page. It draws from the questions of all records, what is due first, own mistakes
// before the rest, and never two neighbours of one record and type. A set may be stopped and taken up again.
//
// Its data: assets/practice/index.js calls studyPractice({tests, topics, items, slips}); each record's script calls
// studyQuestions(record, {item: html}). Without this script the page links to the questions of each record.
(function () {
  'use strict'
  if (!('customElements' in window) || customElements.get('practice-desk')) return
  const progress = window.studyProgress
  const { element, button, counted, script } = window.studyElements
  const MIXED = 10
  const MINUTES = { choice: 1.25, several: 1.5, number: 2.5, order: 2, match: 2, label: 1 }
  let index = null
  const pages = new Map()
  window.studyPractice = data => { index = data }
  window.studyQuestions = (record, items) => pages.set(record, items)

  // Items in an order in which no two neighbours share record and type, as far as there are others.
  function mixed (items) {
    const left = [...items]
    const order = []
    while (left.length) {
      const last = order[order.length - 1]
      const other = left.findIndex(one => !last || (one.record !== last.record && one.type !== last.type))
      const apart = other >= 0 ? other : left.findIndex(one => one.record !== last.record)
      order.push(...left.splice(Math.max(apart, 0), 1))
    }
    return order
  }

  // One from each record in turn, each beginning at another of its questions, so that a set reaches over scope and types.
  function inTurn (items) {
    const rows = new Map()
    for (const one of items) rows.set(one.record, [...(rows.get(one.record) || []), one])
    const order = []
    for (let round = 0; order.length < items.length; round += 1) {
      for (const [place, row] of [...rows.values()].entries()) {
        if (round < row.length) order.push(row[(round + 5 * place + progress.today()) % row.length])
      }
    }
    return order
  }

  // Own mistakes, then what is due, then what is new, then the rest by the day on which it comes again.
  function ranked (items) {
    const today = progress.today()
    const rank = one => {
      const known = progress.item(one.name)
      if (known && known[0] === 0) return 0
      if (known && known[1] <= today) return 1
      return known ? 3 : 2
    }
    const groups = [[], [], [], []]
    for (const one of items) groups[rank(one)].push(one)
    const day = one => progress.item(one.name)[1]
    return [groups[0], groups[1].sort((a, b) => day(a) - day(b)), inTurn(groups[2]), groups[3].sort((a, b) => day(a) - day(b))].flat()
  }

  // The day of the next test that covers a topic, or null.
  function nextTest (topic) {
    const days = index.tests.filter(test => test.on > progress.today() && test.covers.includes(topic)).map(test => test.on)
    return days.length ? Math.min(...days) : null
  }

  const isDue = one => progress.due([one.name], progress.today(), nextTest(one.topic)).length > 0

  function inDays (days) {
    if (days === 0) return 'today'
    const then = new Date()
    then.setDate(then.getDate() + days)
    return `on ${then.toLocaleDateString('en-GB', { weekday: 'long', day: 'numeric', month: 'long' })}`
  }

  class PracticeDesk extends HTMLElement {
    async connectedCallback () {
      try {
        await script(`${this.dataset.folder}index.js`)
      } catch {
        return
      }
      this.items = index.items.map(([record, item, type, topic]) => ({ record, item, type, topic, name: `${record}/${item}` }))
      this.build()
    }

    build () {
      this.querySelector('.without-script')?.remove()
      this.state = element('p', '', { class: 'desk-state', role: 'status' })
      this.scope = element('select', '', { id: 'desk-scope' })
      for (const [n, test] of index.tests.entries()) this.scope.append(element('option', `what “${test.title}” covers`, { value: `test ${n}` }))
      this.scope.append(element('option', 'everything', { value: 'all' }))
      for (const [n, topic] of index.topics.entries()) this.scope.append(element('option', topic.title, { value: `topic ${n}` }))
      const label = element('label', 'Practise ', { for: 'desk-scope' })
      const chosen = element('p', '', { class: 'desk-row' })
      chosen.append(label, this.scope)
      this.sets = element('p', '', { class: 'desk-row' })
      this.sets.append(
        button(`Mixed set of ${MIXED}`, () => this.start(ranked(this.inScope()).slice(0, MIXED))),
        button('What is due', () => this.start(this.dueNow()))
      )
      this.evening = element('p', 'The evening before: ', { class: 'desk-row' })
      for (const minutes of [10, 20, 40]) this.evening.append(button(`${minutes} minutes`, () => this.start(this.route(minutes))))
      this.stage = element('div', '', { class: 'desk-stage' })
      this.writing = element('p', '', { class: 'desk-writing' })
      this.prepend(this.state, chosen, this.sets, this.evening, this.writing, this.stage)
      this.scope.addEventListener('change', () => this.tell())
      document.addEventListener('study-progress', () => this.tell())
      this.tell()
      const route = progress.remembered('route')
      if (route && route.at < route.names.length) {
        const resume = button(`Go on where you stopped (${route.at + 1} of ${route.names.length})`, () => {
          resume.remove()
          this.take(route.names.map(name => this.items.find(one => one.name === name)).filter(Boolean), route.at)
        })
        this.sets.append(resume)
      }
    }

    inScope () {
      const [kind, number] = this.scope.value.split(' ')
      if (kind === 'topic') return this.items.filter(one => one.topic === Number(number))
      if (kind === 'test') return this.items.filter(one => index.tests[Number(number)].covers.includes(one.topic))
      return this.items
    }

    dueNow () {
      return ranked(this.inScope().filter(isDue))
    }

    // What the chosen test's date means for practice, in a sentence; nothing where no test is chosen or its day is not known.
    advice () {
      const [kind, number] = this.scope.value.split(' ')
      const test = kind === 'test' ? index.tests[Number(number)] : null
      const wait = test && test.on !== null ? test.on - progress.today() : 0
      if (wait < 1) return ''
      const days = progress.plan(wait).map(inDays)
      const when = days.length > 1 ? `${days.slice(0, -1).join(', ')} and ${days[days.length - 1]}` : days[0]
      return ` “${test.title}” is ${wait === 1 ? 'tomorrow' : `in ${wait} days`}: practise ${when}.`
    }

    route (minutes) {
      let left = minutes
      return ranked(this.inScope()).filter(one => {
        if (left < MINUTES[one.type]) return false
        left -= MINUTES[one.type]
        return true
      })
    }

    // Parts of written questions whose own marking found something missing, or that were marked long ago, as links.
    tellWriting () {
      const topics = new Set(this.inScope().map(one => one.topic))
      const due = index.written.filter(([name, , , topic]) => topics.has(topic) && isDue({ name: `written/${name}`, topic }))
      const links = due.flatMap(([, title, part, , uri]) => [', ', element('a', `${title}, part ${part}`, { href: uri })])
      this.writing.replaceChildren(...(due.length ? ['To write again: ', ...links.slice(1), '.'] : []))
    }

    tell () {
      this.tellWriting()
      const items = this.inScope()
      const answered = items.filter(one => progress.item(one.name)).length
      const keeps = progress.isKept() ? '' : ' This browser keeps nothing: what you do here is forgotten when you leave the page.'
      this.state.textContent = `${counted(this.dueNow().length, 'question')} due, ${answered} of ${items.length} answered so far.${this.advice()}${keeps}`
    }

    start (items) {
      if (!items.length) return this.state.append(' Nothing is due here: take a mixed set.')
      this.take(mixed(items), 0)
    }

    async take (items, at) {
      progress.remembered('route', { names: items.map(one => one.name), at })
      this.stage.replaceChildren()
      if (at >= items.length) {
        progress.remembered('route', null)
        this.stage.append(element('p', `That was the last of ${counted(items.length, 'question')}. What was wrong comes back tomorrow.`, { tabindex: '-1' }))
        return this.stage.firstChild.focus()
      }
      const { record, item } = items[at]
      try {
        if (!pages.has(record)) await script(`${this.dataset.folder}${record.replaceAll('_', '-')}.js`)
        this.stage.innerHTML = pages.get(record)[item]
      } catch {
        this.stage.append(element('p', 'This question could not be loaded.'))
      }
      const head = element('h2', `Question ${at + 1} of ${items.length}`, { tabindex: '-1', class: 'desk-head' })
      this.stage.querySelector('.check-number')?.remove()
      const row = element('p', '', { class: 'desk-row' })
      row.append(button(at + 1 < items.length ? 'Next question' : 'Finish', () => this.take(items, at + 1)), button('Stop here', () => this.stop()))
      this.stage.prepend(head)
      this.stage.append(row)
      head.focus()
    }

    stop () {
      this.stage.replaceChildren(element('p', 'Stopped. You can go on from here later: the place is kept on this device.', { tabindex: '-1' }))
      this.stage.firstChild.focus()
    }
  }

  // <practice-record>: how far each page is, which mistakes came up, and what is kept: taken along, brought back, forgotten.
  class PracticeRecord extends HTMLElement {
    async connectedCallback () {
      try {
        if (!index) await script(`${this.dataset.folder}index.js`)
      } catch {
        return
      }
      const records = new Map()
      for (const [record, item, , , title, uri] of index.items) {
        if (!records.has(record)) records.set(record, { record, title, uri, questions: [] })
        records.get(record).questions.push(`${record}/${item}`)
      }
      this.records = [...records.values()]
      this.build()
      document.addEventListener('study-progress', () => this.show())
    }

    build () {
      this.table = element('table', '', { class: 'ruled' })
      this.mistakes = element('div')
      this.said = element('p', '', { role: 'status' })
      const file = element('input', '', { type: 'file', accept: '.json', id: 'desk-file' })
      file.addEventListener('change', async () => this.tellImport(progress.imported(await file.files[0].text())))
      const typed = element('input', '', { type: 'text', id: 'desk-code', autocomplete: 'off', size: '24' })
      const keep = element('div', '', { class: 'desk-keep' })
      const rows = [
        [button('Save to a file', () => this.save())],
        [element('label', 'Bring back from a file ', { for: 'desk-file' }), file],
        [button('Show the code for another device', () => this.say(`Your code: ${progress.code(this.records)}. It carries how far each page is, not single answers.`))],
        [element('label', 'Type a code ', { for: 'desk-code' }), typed, button('Take it over', () => this.tellCode(progress.applied(typed.value, this.records)))],
        [button('Forget everything here', () => this.forget())]
      ]
      for (const row of rows) {
        const line = element('p', '', { class: 'desk-row' })
        line.append(...row)
        keep.append(line)
      }
      this.append(this.table, this.mistakes, element('h2', 'Keep or forget', { class: 'screen-only' }), keep, this.said)
      this.show()
    }

    say (text) {
      this.said.textContent = text
    }

    show () {
      const words = ['not begun', 'begun', 'half of it known', 'solid']
      const body = element('tbody')
      for (const one of this.records) {
        const row = element('tr')
        const head = element('th', '', { scope: 'row' })
        head.append(element('a', one.title, { href: one.uri }))
        const due = progress.due(one.questions).length
        row.append(head, element('td', words[progress.level(one.questions)]), element('td', due ? String(due) : '–'))
        body.append(row)
      }
      const heads = element('tr')
      for (const head of ['Page', 'How far', 'Due']) heads.append(element('th', head, { scope: 'col' }))
      const top = element('thead')
      top.append(heads)
      this.table.replaceChildren(element('caption', 'What is solid, what is due'), top, body)
      this.showMistakes()
    }

    showMistakes () {
      const found = Object.entries(progress.slips()).filter(([slip]) => index.slips[slip]).sort((a, b) => b[1] - a[1])
      const list = element('ul')
      for (const [slip, times] of found) {
        const [idea, correction] = index.slips[slip]
        const line = element('li')
        line.append(element('strong', `“${idea}” `), document.createTextNode(`${correction} (${counted(times, 'time')})`))
        list.append(line)
      }
      const none = element('p', 'None yet on this device.')
      this.mistakes.replaceChildren(element('h2', 'Mistakes that came up'), found.length ? list : none, ...this.written())
    }

    // What own marking of written parts found, as the student ticked it.
    written () {
      const marked = index.written.filter(([name]) => progress.item(`written/${name}`))
      if (!marked.length) return []
      const due = marked.filter(([name]) => progress.due([`written/${name}`]).length)
      const lacks = Object.entries(progress.remembered('lacks') || {}).filter(([sort, times]) => index.sorts[sort] && Number.isInteger(times) && times > 0)
      const list = element('ul')
      for (const [sort, times] of lacks.sort((a, b) => b[1] - a[1])) {
        const line = element('li')
        line.append(element('strong', sort), ` (${index.sorts[sort]}): missing ${counted(times, 'time')}`)
        list.append(line)
      }
      const count = element('p', `${counted(marked.length, 'part')} marked by yourself, ${due.length} due again.`)
      return [element('h2', 'Written answers'), count, ...(lacks.length ? [list] : [])]
    }

    save () {
      const link = element('a', '', { download: 'practice.json', href: `data:application/json,${encodeURIComponent(progress.exported())}` })
      link.click()
      this.say('The file practice.json has been handed to your browser.')
    }

    tellImport (number) {
      this.say(number === null ? 'That file was not saved by this page. Nothing was changed.' : `${counted(number, 'question')} brought back.`)
    }

    tellCode (found) {
      const words = {
        applied: 'The code has been taken over.',
        mistyped: 'That code has a typing mistake. Nothing was changed.',
        'other edition': 'That code comes from another edition of this site. Nothing was changed.'
      }
      this.say(words[found])
    }

    forget () {
      if (!confirm('Forget all answers on this device?')) return
      progress.forget()
      this.say('Everything here has been forgotten.')
    }
  }

  // <practice-due>: a line on the front page; empty until something is due.
  class PracticeDue extends HTMLElement {
    async connectedCallback () {
      try {
        if (!index) await script(`${this.dataset.folder}index.js`)
      } catch {
        return
      }
      const due = index.items.map(([record, item, , topic]) => ({ name: `${record}/${item}`, topic })).filter(isDue).length
      if (!due) return
      const line = element('p', `${counted(due, 'question')} due on this device. `)
      line.append(element('a', 'Practise now', { href: this.dataset.practice }))
      this.replaceChildren(line)
    }
  }

  customElements.define('practice-desk', PracticeDesk)
  customElements.define('practice-record', PracticeRecord)
  customElements.define('practice-due', PracticeDue)
})()

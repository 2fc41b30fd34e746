// <written-sheet>: what belongs to a whole written question: a clock, one part at a time, the sum of own marking, the sheet to hand in.
// It stands behind the last part. data-question, data-title, data-minutes; <p class="clock-place"> stands below the plan.
(function () {
  'use strict'
  if (!('customElements' in window) || customElements.get('written-sheet')) return
  const { element, button } = window.studyElements

  class WrittenSheet extends HTMLElement {
    connectedCallback () {
      if (this.drafts) return
      this.drafts = window.studyDrafts(this.dataset.question)
      this.article = this.closest('article') || document.body
      this.parts = [...this.article.querySelectorAll('written-part')]
      this.makeClock(this.article.querySelector('.clock-place'))
      this.makeOnePart(this.article.querySelector('.one-part-place'))
      this.makeSum()
      this.makeSheet()
      this.article.addEventListener('written-marked', event => this.marked(event.detail))
      addEventListener('beforeunload', event => {
        if (!window.studyProgress.isKept() && [...this.article.querySelectorAll('written-part')].some(part => part.ownWords())) event.preventDefault()
      })
    }

    // The clock: off until it is started; it can be paused, and when its time is over nothing happens but a sentence.
    makeClock (place) {
      const whole = Number(this.dataset.minutes) * 60
      let left = this.drafts.number('clock') ?? whole
      let ends = 0
      let ticking = 0
      const shown = element('span', '', { class: 'clock' })
      const said = element('span', '', { role: 'status' })
      const now = () => (ticking ? Math.round((ends - Date.now()) / 1000) : left)
      const show = () => {
        const seconds = now()
        const far = Math.abs(seconds)
        const time = `${Math.floor(far / 60)}:${String(far % 60).padStart(2, '0')}`
        place.toggleAttribute('data-runs', Boolean(ticking))
        reset.hidden = Boolean(ticking) || left === whole
        shown.textContent = seconds >= 0 ? `${time} left` : `${time} over the time`
        if (ticking && seconds === 0) said.textContent = 'The time is over. Nothing is closed: write on if you like.'
        if (ticking && seconds === Math.round(whole / 2)) said.textContent = 'Half of the time is over.'
      }
      const pause = () => {
        left = now()
        clearInterval(ticking)
        ticking = 0
        this.drafts.change('clock', left)
        this.drafts.flush()
        start.textContent = 'Go on'
        show()
      }
      const start = button(left === whole ? 'Start the clock' : 'Go on', () => {
        if (ticking) return pause()
        ends = Date.now() + left * 1000
        ticking = setInterval(show, 1000)
        start.textContent = 'Pause'
        said.textContent = ''
        show()
      })
      const reset = button('Back to the beginning', () => {
        if (ticking) pause()
        left = whole
        this.drafts.change('clock', null)
        start.textContent = 'Start the clock'
        said.textContent = ''
        show()
      })
      addEventListener('pagehide', () => { if (ticking) pause() })
      place.append(shown, start, reset, said)
      show()
    }

    // One part at a time, its prompt in large letters. One can turn to the next part above the data and below the part.
    makeOnePart (place) {
      const below = element('p', '', { class: 'next-part desk-row' })
      const heads = this.parts.map(part => headOf(part))
      let at = -1
      const show = next => {
        const before = at
        at = next
        this.article.classList.toggle('one-part', at >= 0)
        const groups = heads.map(following)
        groups.flat().forEach(one => one.removeAttribute('data-away'))
        if (at >= 0) groups.filter((_, index) => index !== at).flat().forEach(one => one.setAttribute('data-away', ''))
        whole.textContent = at < 0 ? 'One part at a time' : 'Show all parts'
        below.hidden = at < 0
        for (const [move, by] of moves) {
          move.hidden = at < 0
          move.setAttribute('aria-disabled', String(!heads[at + by]))
        }
        if (at < 0) {
          if (before >= 0) place.scrollIntoView({ block: 'nearest' })
          return
        }
        heads[at].setAttribute('tabindex', '-1')
        heads[at].focus()
      }
      const turns = () => [['Part before', -1], ['Next part', 1]].map(([text, by]) => [button(text, () => { if (heads[at + by]) show(at + by) }), by])
      const [above, under] = [turns(), turns()]
      const moves = [...above, ...under]
      const whole = button('One part at a time', () => show(at < 0 ? 0 : -1))
      place.append(whole, ...above.map(([move]) => move))
      below.append(...under.map(([move]) => move))
      this.append(below)
      addEventListener('hashchange', () => {
        const wanted = document.getElementById(decodeURIComponent(location.hash.slice(1)))
        const index = wanted ? heads.findIndex(head => following(head).some(one => one.contains(wanted))) : -1
        if (at >= 0 && index >= 0) show(index)
      })
      show(-1)
    }

    makeSum () {
      this.sum = element('div', '', { class: 'own-sum' })
      this.append(this.sum)
      this.tellSum()
      document.addEventListener('study-drafts', () => this.tellSum())
    }

    tellSum () {
      const marked = this.parts.filter(part => this.drafts.number(`${part.part}/marked`) !== null)
      if (!marked.length) return this.sum.replaceChildren()
      const sum = marked.reduce((total, part) => total + this.drafts.number(`${part.part}/marked`), 0)
      const worth = marked.reduce((total, part) => total + part.worth, 0)
      const which = marked.length === this.parts.length ? 'all parts' : `part${marked.length > 1 ? 's' : ''} ${marked.map(part => part.part).join(', ')}`
      this.sum.replaceChildren(element('p', `By your own marking: ${sum} of ${worth} for ${which}.`))
    }

    // What is missing is counted by its sort for My record, each part as it was marked last; the part comes back in practice.
    // Pressing again on one day, with nothing gained or lost, is no further try.
    // With other numbers it is the same part.
    marked ({ part, marks, worth, lacks, before }) {
      const isNews = before.day !== new Date().toDateString() || (before.marks === worth) !== (marks === worth)
      if (isNews) window.studyProgress.note(`written/${this.dataset.question}/${part}`, marks === worth)
      const counts = { ...window.studyProgress.remembered('lacks') }
      const count = (one, by) => { counts[one] = Math.max(0, (Number.isInteger(counts[one]) ? counts[one] : 0) + by) }
      before.lacks.forEach(one => count(one, -1))
      lacks.forEach(one => count(one, 1))
      if (lacks.length || before.lacks.length) window.studyProgress.remembered('lacks', counts)
    }

    makeSheet () {
      const row = element('p', '', { class: 'desk-row' })
      this.said = element('p', '', { role: 'status' })
      row.append(button('Print my sheet', () => this.printSheet()), button('Save my sheet as a file', () => this.saveSheet()))
      this.append(row, this.said)
    }

    sheet () {
      const sheet = element('section', '', { class: 'hand-in', 'aria-label': 'Sheet to hand in' })
      sheet.append(element('h1', this.dataset.title), element('p', 'Name: ______________________   Class: __________   Date: ______________', { class: 'name-line' }))
      sheet.append(...this.parts.flatMap(part => this.onSheet(part)))
      if (this.sum.textContent) sheet.append(element('p', this.sum.textContent, { class: 'own' }))
      const again = this.article.querySelector('written-again')
      if (again) sheet.append(...again.onSheet(part => this.onSheet(part)))
      return sheet
    }

    // A part with what was written and ticked in it, or with room to write.
    onSheet (part) {
      const prompt = promptOf(part)
      const words = part.ownWords()
      const marked = part.markedBefore()
      return [
        element('h2', `Part ${part.part} (${prompt.dataset.worth})`), element('p', prompt.textContent, { class: 'prompt' }),
        words ? element('p', words, { class: 'handed' }) : part.querySelector('.ruled-space').cloneNode(true),
        ...(marked === null ? [] : [element('p', `My own marking: ${marked} of ${part.worth}`, { class: 'own' })])
      ]
    }

    printSheet () {
      const sheet = this.sheet()
      this.article.append(sheet)
      document.documentElement.classList.add('prints-sheet')
      addEventListener('afterprint', () => {
        document.documentElement.classList.remove('prints-sheet')
        sheet.remove()
      }, { once: true })
      window.print()
    }

    saveSheet () {
      const page = document.implementation.createHTMLDocument(this.dataset.title)
      page.documentElement.lang = 'en'
      page.head.prepend(Object.assign(page.createElement('meta'), { httpEquiv: 'Content-Type', content: 'text/html; charset=utf-8' }))
      page.head.append(Object.assign(page.createElement('style'), {
        textContent: 'body{font:1rem/1.5 sans-serif;max-width:44rem;margin:2rem auto;padding:0 1rem}.prompt{font-weight:600}.handed{white-space:pre-wrap}.ruled-space>div{height:8.5mm;border-bottom:.3mm solid #777}'
      }))
      page.body.append(this.sheet())
      const text = `<!doctype html>${page.documentElement.outerHTML}`
      const link = element('a', '', { download: `${this.dataset.question.replaceAll('_', '-')}.html`, href: `data:text/html;charset=utf-8,${encodeURIComponent(text)}` })
      link.click()
      this.said.textContent = `The file ${link.download} has been handed to your browser. Give it to your teacher.`
    }
  }

  // The prompt that stands before a part.
  function promptOf (part) {
    let block = part
    while (!block.matches('.written-prompt')) block = block.previousElementSibling || block.parentElement
    return block
  }

  // The heading under which a part stands, and all that follows it up to the next one.
  function headOf (part) {
    let block = part
    while (block && block.tagName !== 'H2') block = block.previousElementSibling || block.parentElement
    return block
  }

  function following (head) {
    const found = [head]
    for (let one = head.nextElementSibling; one && one.tagName !== 'H2' && !one.querySelector('written-again, written-sheet'); one = one.nextElementSibling) found.push(one)
    return found
  }

  customElements.define('written-sheet', WrittenSheet)
})()

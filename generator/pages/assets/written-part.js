// <written-part>: one part of a written question: samples to mark, room to write, hints on request, own marking by the guide.
// It judges nobody's words: totals come from what people tick. Without it samples, guide and ruled space stand on the page.
//
// Markup: data-question, data-part, data-worth, data-rule, data-task (JSON for the hints); inside it .sample blocks with
// data-earns (JSON) and a closed .teacher, an empty .writing (with data-setup where there is a set-up), .ruled-space, and
// details.guide whose list .ideas has a line for each idea: data-idea, data-marks, data-lacks, data-not-enough.
// Event: written-marked {question, part, marks, worth, lacks, before}, which bubbles, whenever own marking is finished; `before` is what
// was kept of the last time: {marks, lacks, day}.
(function () {
  'use strict'
  if (!('customElements' in window) || customElements.get('written-part')) return
  const { element, button, counted, script } = window.studyElements

  class WrittenPart extends HTMLElement {
    connectedCallback () {
      if (this.lines) return
      const { question, part, worth, rule } = this.dataset
      Object.assign(this, { question, part, rule, worth: Number(worth) })
      this.drafts = window.studyDrafts(question)
      this.guide = this.querySelector('details.guide')
      this.rows = [...this.guide.querySelectorAll('.ideas > li')]
      this.lines = this.rows.map(row => ({
        id: row.dataset.idea, marks: Number(row.dataset.marks), gives: row.dataset.gives || '', lacks: row.dataset.lacks || '', notEnough: row.dataset.notEnough || '',
        says: row.querySelector('.says').textContent
      }))
      this.querySelectorAll('.sample').forEach((sample, place) => this.makeSample(sample, `${part}/sample/${place}`))
      this.makeWriting(this.querySelector('.writing'))
      this.makeOwnMarking()
      this.addEventListener('self-check-answered', event => this.answered(event.detail.right))
    }

    // A typed number is marked by the page, so its line in the guide is ticked, or not, by the page.
    answered (right) {
      const box = this.guide.querySelector('.ideas > li[data-idea="answer"] input')
      if (box.checked !== right) box.click()
    }

    // A box to tick; what is ticked is kept under `key`.
    tick (line, key, label) {
      const box = element('input', '', { type: 'checkbox', id: this.own(`${key}-${line.id}`) })
      box.checked = this.drafts.list(key).includes(line.id)
      box.addEventListener('change', () => {
        const others = this.drafts.list(key).filter(one => one !== line.id)
        this.drafts.change(key, box.checked ? [...others, line.id] : others)
      })
      label.setAttribute('for', box.id)
      return box
    }

    makeSample (sample, key) {
      const teacher = sample.querySelector('.teacher')
      const fields = element('fieldset', '', { class: 'to-tick' })
      fields.append(element('legend', 'Which ideas do you find in it?'))
      for (const [place, line] of this.lines.entries()) {
        const row = element('p')
        const label = element('label')
        label.append(...this.rows[place].querySelector('.says').cloneNode(true).childNodes)
        row.append(this.tick(line, key, label), ' ', label)
        fields.append(row)
      }
      const output = element('div', '', { role: 'status', class: 'compared' })
      fields.append(button('Compare with the teacher', () => this.compare(sample, key, output)))
      teacher.before(fields, output)
      teacher.hidden = true
    }

    compare (sample, key, output) {
      const rows = window.studyMarking.compared(this.lines, this.drafts.list(key), JSON.parse(sample.dataset.earns))
      const alike = rows.filter(row => row.mine === row.teachers).length
      const list = element('ul')
      for (const row of rows) {
        const line = element('li', '', { 'data-alike': String(row.mine === row.teachers) })
        line.append(element('span', `${row.mine === row.teachers ? '=' : '≠'} `, { 'aria-hidden': 'true' }), `“${row.line.says.replace(/\.$/, '')}”: ${window.studyMarking.told(row)}`)
        list.append(line)
      }
      output.replaceChildren(element('p', `You and the teacher agree on ${alike} of ${counted(rows.length, 'idea')}.`), list)
      const teacher = sample.querySelector('.teacher')
      teacher.hidden = false
      teacher.open = true
    }

    // A text, a set-up before a number, or a number alone, which has its own box and is kept like the rest.
    makeWriting (place) {
      const { setup, number } = place.dataset
      const inWords = setup === undefined && number === undefined
      this.fields = []
      this.onPaper = element('p', '', { class: 'written-on-paper paper-only' })
      this.querySelector('.ruled-space').after(this.onPaper)
      if (inWords) place.append(...this.area('text', 'Your answer', 2 + 2 * this.worth))
      if (setup !== undefined) place.append(...this.area('setup', 'Your set-up, with numbers and units', 2))
      if (!inWords) this.keepNumber(this.querySelector('self-check input[type="text"]'))
      this.kept = element('p', '', { class: 'kept' })
      this.hints = element('div', '', { role: 'status', class: 'hints-told' })
      const row = element('p', '', { class: 'desk-row' })
      if (inWords) row.append(button('Hints on my words', () => this.tellHints()))
      place.append(row, this.kept, this.hints)
      this.tellKept()
      this.print()
      document.addEventListener('study-drafts', () => this.tellKept())
    }

    // An id that no part of another question has, for several may stand in one file.
    own (name) {
      return `${this.question}-${this.part}-${name}`.replaceAll('/', '-')
    }

    area (name, text, rows) {
      const area = element('textarea', '', { id: this.own(name), rows: String(rows), maxlength: '20000', spellcheck: 'true' })
      this.keep(area, name)
      return [element('label', text, { for: area.id }), area]
    }

    // A number that is changed is not marked any more, until it is checked again.
    keepNumber (field) {
      this.keep(field, 'answer')
      field.addEventListener('input', () => this.answered(false))
    }

    keep (field, name) {
      const key = `${this.part}/${name}`
      this.fields.push(field)
      field.value = this.drafts.text(key)
      field.addEventListener('input', () => {
        this.drafts.change(key, field.value)
        this.print()
      })
      field.addEventListener('change', () => this.drafts.flush())
    }

    // What was written: the text, or set-up and typed number.
    ownWords () {
      return this.fields.map(field => field.value.trim()).filter(Boolean).join('\n= ')
    }

    // On paper what was written stands in place of the ruled lines.
    print () {
      this.onPaper.textContent = this.ownWords()
      this.querySelector('.ruled-space').hidden = Boolean(this.ownWords())
    }

    tellKept () {
      const kept = window.studyProgress.isKept()
      const text = kept ? 'What you write is kept on this device, and nowhere else.' : 'This browser keeps nothing, or its room is full: print or save your sheet before you leave the page.'
      this.kept.dataset.kept = String(kept)
      if (kept) this.kept.removeAttribute('role')
      else this.kept.setAttribute('role', 'status')
      if (this.kept.textContent !== text) this.kept.textContent = text
    }

    async tellHints () {
      if (!this.ownWords()) return this.hints.replaceChildren(element('p', 'Write something first.'))
      try {
        await script(this.dataset.words)
      } catch {
        return this.hints.replaceChildren(element('p', 'The hints could not be loaded.'))
      }
      const found = window.studyCoaching.hints(this.fields[0].value, JSON.parse(this.dataset.task))
      const list = element('ul')
      for (const hint of found) list.append(element('li', hint.says, { 'data-rule': hint.rule }))
      const none = element('p', 'Nothing to ask about these words.')
      this.hints.replaceChildren(found.length ? list : none, element('p', window.studyCoaching.standing, { class: 'no-mark' }))
    }

    makeOwnMarking () {
      const key = `${this.part}/ideas`
      for (const [place, row] of this.rows.entries()) {
        const says = row.querySelector('.says')
        const label = element('label')
        says.before(label)
        label.append(says)
        label.before(this.tick(this.lines[place], key, label), ' ')
      }
      const mine = element('blockquote', '', { class: 'own-words' })
      this.guide.querySelector('.ideas').before(element('p', 'Read each idea, find it in your own words, and tick it only if it is there.', { class: 'screen-only' }), mine)
      this.result = element('div', '', { role: 'status', class: 'own-result' })
      this.guide.append(button('I have marked it', () => this.finish(), ''), this.result)
      const show = () => {
        const own = this.ownWords()
        mine.hidden = !own
        mine.textContent = own
      }
      this.guide.addEventListener('toggle', show)
      this.addEventListener('input', show)
      this.guide.querySelector('.ideas').addEventListener('change', () => this.tellResult())
      show()
      this.tellResult()
    }

    marking () {
      const ticked = this.drafts.list(`${this.part}/ideas`)
      return window.studyMarking.total(this.lines, ticked, this.rule, this.worth)
    }

    // What came of own marking when it was finished last; null where it was not.
    markedBefore () {
      return this.drafts.number(`${this.part}/marked`)
    }

    missing () {
      const ticked = this.drafts.list(`${this.part}/ideas`)
      const missing = this.marking() < this.worth ? this.lines.filter(line => line.gives && !ticked.includes(line.id)) : []
      return new Map(missing.map(line => [line.gives, line.lacks]))
    }

    finish () {
      const [marked, lacked, day] = ['marked', 'lacks', 'day'].map(name => `${this.part}/${name}`)
      const before = { marks: this.drafts.number(marked), lacks: this.drafts.list(lacked), day: this.drafts.text(day) }
      const [marks, lacks] = [this.marking(), [...this.missing().keys()]]
      this.drafts.change(marked, marks)
      this.drafts.change(lacked, lacks)
      this.drafts.change(day, new Date().toDateString())
      this.drafts.flush()
      this.tellResult()
      const detail = { question: this.question, part: this.part, marks, worth: this.worth, lacks, before }
      this.dispatchEvent(new CustomEvent('written-marked', { bubbles: true, detail }))
    }

    // What came of own marking, also when one comes back to it; ticks that changed since are to be confirmed first.
    tellResult () {
      const marked = this.markedBefore()
      const marks = this.marking()
      if (marked === null) return
      if (marked !== marks) return this.result.replaceChildren(element('p', 'Your ticks have changed. Press “I have marked it” once more.'))
      const ticked = this.drafts.list(`${this.part}/ideas`)
      const lacks = this.missing()
      const said = [element('p', `By your own marking: ${marks} of ${this.worth}.`)]
      if (!ticked.length) said.push(element('p', `You ticked no idea.${this.dataset.focus ? ` The focus is: ${this.dataset.focus}.` : ''}`))
      if (this.rule === 'parts' && ticked.includes('answer') && !ticked.includes('setup') && this.lines.length > 1) said.push(element('p', 'The right answer counts for the set-up too.'))
      if (lacks.size) said.push(element('p', `What is missing: ${[...lacks.values()].join('; ')}.`))
      const again = this.guide.querySelector('.read-again')
      if (marks < this.worth && again) {
        const shown = again.cloneNode(true)
        shown.hidden = false
        said.push(shown)
      }
      this.result.replaceChildren(...said)
    }
  }

  customElements.define('written-part', WrittenPart)
})()

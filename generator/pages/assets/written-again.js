// <written-again>: the calculations of a written question again, with other numbers. It stands behind the last part; without it nothing
// is missing but the offer.
//
// Markup: data-question, data-numbers (the address of its script, loaded when it is first asked for), data-parts, data-sets. The script
// calls studyAgain(question, lines, sets): each set lists its lines of HTML by their places. It holds what is given, and a <written-part>
// for each part, whose data-question is the set's own name, so that drafts of one set do not stand in another. Which set was shown last is
// kept with the drafts of the question.
(function () {
  'use strict'
  if (!('customElements' in window) || customElements.get('written-again')) return
  const { element, button, script } = window.studyElements
  const loaded = new Map()
  window.studyAgain = (question, lines, sets) => loaded.set(question, sets.map(set => set.map(place => lines[place]).join('\n')))

  class WrittenAgain extends HTMLElement {
    connectedCallback () {
      if (this.drafts) return
      const { question, parts, sets } = this.dataset
      this.drafts = window.studyDrafts(question)
      this.sets = Number(sets)
      this.shown = -1
      this.head = element('h2', 'The same with other numbers', { tabindex: '-1', id: `${question}-again` })
      const what = `${parts.length > 1 ? 'Parts' : 'Part'} ${parts} again. The numbers are drawn for practice; each set has its own guide.`
      this.first = button('', () => this.show(this.shown < 0 ? this.last() : this.shown + 1))
      this.more = button('Other numbers again', () => this.show(this.shown + 1).then(() => this.head.focus()))
      this.said = element('p', '', { role: 'status' })
      this.set = element('div', '', { class: 'again-set' })
      const [above, below] = [this.first, this.more].map(one => element('p', '', { class: 'desk-row' }).appendChild(one).parentNode)
      this.append(this.head, element('p', what, { class: 'screen-only' }), above, this.said, this.set, below)
      this.offer()
      customElements.whenDefined('written-part').then(() => this.pointTo(parts))
    }

    last () {
      const kept = this.drafts.number('again')
      return Number.isInteger(kept) && kept >= 0 && kept < this.sets ? kept : 0
    }

    offer () {
      const begun = this.drafts.number('again') !== null
      this.first.textContent = this.shown >= 0 ? 'Other numbers again' : begun ? `Go on with set ${this.last() + 1}` : 'Give me other numbers'
      const isOver = this.shown >= 0 && this.sets < 2
      this.first.parentNode.hidden = isOver
      this.more.parentNode.hidden = isOver || this.shown < 0
    }

    async show (place) {
      try {
        await script(this.dataset.numbers)
      } catch {
        this.said.textContent = 'The other numbers could not be loaded. The parts above are still there.'
        return
      }
      this.shown = place % this.sets
      this.drafts.change('again', this.shown)
      this.set.innerHTML = loaded.get(this.dataset.question)[this.shown]
      this.toggleAttribute('data-shown', true)
      this.said.textContent = `Set ${this.shown + 1} of ${this.sets} stands below.`
      this.offer()
    }

    // From the guide of each part that calculates, where one sees what went wrong, a way to here.
    pointTo (parts) {
      const names = parts.split(/, | and /)
      for (const part of (this.closest('article') || document.body).querySelectorAll('written-part')) {
        if (!names.includes(part.dataset.part) || part.dataset.question !== this.dataset.question) continue
        const row = element('p', 'To try it once more: ', { class: 'screen-only' })
        const link = element('a', 'the same with other numbers', { href: `#${this.head.id}` })
        row.append(link, '.')
        part.querySelector('details.guide').append(row)
      }
    }

    // What was written here, for the sheet to hand in: each part below the numbers that it was worked out from.
    onSheet (written) {
      const parts = [...this.set.querySelectorAll('written-part')].filter(part => part.ownWords())
      if (!parts.length) return []
      const given = [...this.set.children].filter(one => one.matches('p:not(.written-prompt), .scrolled')).map(one => one.cloneNode(true))
      return [element('h2', `${this.head.textContent}: set ${this.shown + 1}`), ...given, ...parts.flatMap(written)]
    }
  }

  customElements.define('written-again', WrittenAgain)
})()

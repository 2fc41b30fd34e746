// <self-check> marks the question inside it. The page is complete without it: question, answers and feedback stand there.
//
// Markup: data-type (choice, several, number, order, match, label) and data-question; a <form> with one <fieldset>, an
// <output>, and <details class="answer"> whose list .feedback has a line for each answer, with data-right:
//   choice, several: data-option; number: data-low and data-high; label: data-labels, a list in JSON;
//   order: data-after (all, start, or the step behind which a wrong one stands); match: data-row and data-partner.
// The last line of number and label, without such a mark, stands for any other answer. data-slip names the misconception behind
// a wrong answer, and data-sure is what a reader who was sure of it is told first: the wrong idea, quoted and denied.
// Event: self-check-answered {question, right, misses, variant, sure, slip}, which bubbles; misses counts what was wrong, variant is 0
// for the record's own numbers.
(function () {
  'use strict'
  if (!('customElements' in window) || customElements.get('self-check')) return

  const RIGHT = '✓ Right.'
  const WRONG = '✗ Not right.'
  const NEARLY = '◐ Nearly.'
  const UNREADABLE = 'That cannot be read as one number. Write it like 1234.5, 1234,5 or 1.2e3.'
  const NEAR = 1e-9 // relative: what is lost when a number is written in decimals

  // What an answer is told, with its formulas set; texts and such pieces make up a verdict.
  const says = line => {
    const piece = document.createDocumentFragment()
    piece.append(...line.querySelector('.says').cloneNode(true).childNodes)
    return piece
  }
  const once = pieces => pieces.filter((piece, index) => pieces.findIndex(other => other.textContent === piece.textContent) === index)
  const isRight = line => line.dataset.right === 'true'

  class SelfCheck extends HTMLElement {
    connectedCallback () {
      this.abort = new AbortController()
      const { signal } = this.abort
      this.form = this.querySelector('form')
      this.output = this.querySelector('output')
      this.form.addEventListener('submit', event => this.answer(event), { signal })
      if (this.dataset.type === 'order') this.makeMovable(signal)
      if (this.dataset.type === 'number') this.form.addEventListener('input', event => this.typed(event), { signal })
      if (this.form.querySelector('.check-button')) return
      this.form.querySelector('fieldset').append(this.confidence())
      const button = document.createElement('button')
      button.type = 'submit'
      button.className = 'check-button'
      button.textContent = 'Check'
      this.form.querySelector('fieldset').append(button)
      if (this.dataset.fresh) window.studyFreshNumbers.attach(this, signal)
    }

    // How sure the reader is, before the verdict; may be left out, and is never scored.
    confidence () {
      const label = document.createElement('label')
      label.className = 'sure'
      label.textContent = 'How sure are you? '
      const select = document.createElement('select')
      for (const [value, text] of [['', 'optional'], ['guess', 'a guess'], ['fairly', 'fairly'], ['sure', 'sure']]) select.add(new Option(text, value))
      label.append(select)
      return label
    }

    get lines () {
      return [...this.querySelectorAll('.feedback > li')]
    }

    get sureness () {
      return this.form.querySelector('.sure select')?.value || ''
    }

    tells (line) {
      return this.sureness === 'sure' && line.dataset.sure ? [line.dataset.sure, says(line)] : [says(line)]
    }

    disconnectedCallback () {
      this.abort.abort()
    }

    answer (event) {
      event.preventDefault()
      this[`${this.dataset.type}Answered`]()
    }

    choiceAnswered () {
      const picked = this.form.querySelector('input:checked')
      if (!picked) return this.say('Pick one of the options first.')
      this.mark(this.lines.find(line => line.dataset.option === picked.value))
    }

    severalAnswered () {
      const picked = new Set([...this.form.querySelectorAll('input:checked')].map(input => input.value))
      if (!picked.size) return this.say('Pick the options that are right first.')
      const wrong = this.lines.filter(line => picked.has(line.dataset.option) && !isRight(line))
      const missing = this.lines.filter(line => !picked.has(line.dataset.option) && isRight(line)).length
      const left = missing ? [missing === 1 ? 'One that is right is not picked yet.' : `${missing} that are right are not picked yet.`] : []
      const right = this.lines.filter(isRight).map(says)
      if (!wrong.length && !missing) return this.verdict(true, once(right), 0)
      const told = wrong.flatMap((line, place) => [`“${line.querySelector('strong').textContent}”:`, ...(place ? [says(line)] : this.tells(line))])
      this.verdict(false, [...told, ...left], wrong.length + missing, '', wrong[0])
    }

    labelAnswered () {
      const picked = this.form.querySelector('.entry select').value
      if (!picked) return this.say('Pick an answer first.')
      this.mark(this.lines.find(line => JSON.parse(line.dataset.labels || '[]').includes(picked)) || this.lines[this.lines.length - 1])
    }

    matchAnswered () {
      const picks = [...this.form.querySelectorAll('.rows select')]
      const empty = picks.filter(pick => !pick.value).length
      if (empty) return this.say(empty === picks.length ? 'Pick a partner for each line first.' : 'Some lines have no partner yet.')
      const wrong = this.lines.filter((line, row) => picks[row].value !== line.dataset.partner)
      if (!wrong.length) return this.verdict(true, ['Every line has its partner.'], 0)
      const count = `${picks.length - wrong.length} of ${picks.length} are matched.`
      this.verdict(false, [count, `Look again at “${this.textOf(picks[this.lines.indexOf(wrong[0])])}”:`, says(wrong[0])], wrong.length)
    }

    textOf (select) {
      return this.form.querySelector(`label[for="${select.id}"]`).textContent
    }

    get steps () {
      return [...this.form.querySelectorAll('.steps > li')]
    }

    orderAnswered () {
      const order = this.steps.map(step => Number(step.dataset.step))
      const place = order.findIndex((step, index) => step !== index)
      const key = place < 0 ? 'all' : place === 0 ? 'start' : String(place - 1)
      const line = this.lines.find(one => one.dataset.after === key)
      if (place < 0) return this.mark(line)
      const soFar = place ? [place === 1 ? 'The first step is right.' : `The first ${place} steps are right.`] : []
      this.verdict(false, [...soFar, says(line)], order.filter((step, index) => step !== index).length)
    }

    makeMovable (signal) {
      for (const step of this.steps) {
        const text = step.querySelector('.step').textContent
        step.querySelector('.place').remove()
        for (const [sign, name, by] of [['↓', 'down', 1], ['↑', 'up', -1]]) {
          const button = document.createElement('button')
          button.type = 'button'
          button.className = 'move'
          button.textContent = sign
          button.dataset.by = String(by)
          button.setAttribute('aria-label', `Move ${name}: ${text}`)
          step.prepend(button)
          button.addEventListener('click', () => this.move(step, by), { signal })
        }
      }
      this.endsCannotMove()
    }

    move (step, by) {
      const steps = this.steps
      const other = steps[steps.indexOf(step) + by]
      if (!other) return
      by > 0 ? other.after(step) : other.before(step)
      this.endsCannotMove()
      step.querySelector(`[data-by="${by}"]`).focus()
      this.say(`Now at place ${this.steps.indexOf(step) + 1} of ${steps.length}.`)
    }

    endsCannotMove () {
      this.steps.forEach((step, index, all) => {
        step.querySelector('[data-by="-1"]').setAttribute('aria-disabled', String(index === 0))
        step.querySelector('[data-by="1"]').setAttribute('aria-disabled', String(index === all.length - 1))
      })
    }

    // A verdict does not stand beside another number than its own.
    typed (event) {
      if (event.target.matches('input[type="text"]') && this.output.dataset.verdict) this.say('')
    }

    numberAnswered () {
      const box = this.form.querySelector('input[type="text"]')
      const reading = window.studyNumbers.read(box.value)
      if (reading.kind === 'empty') return this.say('Type a number first.')
      if (reading.kind === 'range') return this.say('That is a range. Write the one number that you mean.')
      if (reading.kind === 'none') return this.say(UNREADABLE)
      const unit = box.dataset.unit
      const turned = reading.unit ? window.studyNumbers.factor(reading.unit, unit) : { factor: 1, offset: 0 }
      if (turned === undefined) return this.say(`“${reading.unit}” is not a unit that can be read here. ${unit ? `Write it like ${unit}.` : 'Write the number alone.'}`)
      if (turned === null) return this.verdict(false, [`“${reading.unit}” measures something else than what is asked for.`], 1, 'unit')
      this.markNumber(reading, reading.values.map(value => value * turned.factor + turned.offset), 'asksUnit' in box.dataset)
    }

    markNumber (reading, numbers, asksUnit) {
      const known = this.lines.filter(line => line.dataset.low !== undefined)
      const fits = number => known.find(line => number >= end(line.dataset.low, -1) && number <= end(line.dataset.high, 1))
      const right = numbers.map(fits).find(line => line && isRight(line))
      if (!right && numbers.length > 1) return this.say(`Do you mean ${reading.values.join(' or ')}? Write it without the comma.`)
      if (right && asksUnit && !reading.unit) {
        return this.verdict(false, ['The number is right, but its unit is missing: a number without a unit says nothing. Write it behind the number.'], 1, 'nearly')
      }
      this.mark(right || fits(numbers[0]) || this.lines[this.lines.length - 1])
    }

    mark (line) {
      this.verdict(isRight(line), this.tells(line), isRight(line) ? 0 : 1, '', line)
    }

    verdict (right, pieces, misses, kind = '', line = undefined) {
      const sure = this.sureness
      const { slip = '', sure: refutation } = line?.dataset || {}
      if (!right && sure === 'sure' && !refutation) pieces.push('You were sure: read the answer below with care, for such mistakes are put right best.')
      const head = right ? RIGHT : kind === 'nearly' ? NEARLY : WRONG
      this.say([head, ...pieces], right ? 'right' : kind === 'nearly' ? 'nearly' : 'wrong')
      const detail = { question: this.dataset.question, right, misses, variant: Number(this.dataset.variant || 0), sure, slip }
      this.dispatchEvent(new CustomEvent('self-check-answered', { bubbles: true, detail }))
    }

    say (pieces, verdict = '') {
      this.output.replaceChildren(...[].concat(pieces).flatMap(piece => [' ', piece]).slice(1))
      this.output.dataset.verdict = verdict
    }
  }

  function end (text, side) {
    const number = Number(text)
    return number + side * Math.abs(number) * NEAR
  }

  customElements.define('self-check', SelfCheck)
})()

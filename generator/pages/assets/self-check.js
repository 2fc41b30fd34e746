// <self-check> marks the question inside it. The page is complete without it: question, answers and feedback stand there.
//
// Markup: a <form> with one <fieldset> (radio buttons, or one text box), an <output>, and <details class="answer"> whose
// list .feedback has a line for each answer: data-option (number of the option), or data-low and data-high (a range of
// numbers), with data-right. The last line without either stands for any other number.
// Event: self-check-answered {question, right}, which bubbles.
(function () {
  'use strict'
  if (!('customElements' in window) || customElements.get('self-check')) return

  const RIGHT = '✓ Right.'
  const WRONG = '✗ Not right.'

  // The readings of a typed number: none, one, or two where a comma may mark decimals or thousands.
  function readings (typed) {
    const powers = { '⁰': 0, '¹': 1, '²': 2, '³': 3, '⁴': 4, '⁵': 5, '⁶': 6, '⁷': 7, '⁸': 8, '⁹': 9, '⁻': '-' }
    const text = typed
      .replace(/[⁻⁰¹²³⁴-⁹]+/g, found => '^' + [...found].map(sign => powers[sign]).join(''))
      .normalize('NFKC').trim()
      .replace(/[−–]/g, '-')
      .replace(/^(≈|~|ca\.|about)\s*/i, '')
      .replace(/\s*[x×*·]\s*10\s*\^?\s*\(?([+-]?\d+)\)?$/i, 'e$1')
      .replace(/(\d)[ \u00a0\u2009\u202f'’](?=\d{3}(\D|$))/g, '$1')
    const found = /^([+-]?)((?:\d+[.,])*\d+|\d*[.,]\d+)(e[+-]?\d{1,3})?$/i.exec(text)
    if (!found) return []
    const [, sign, digits, power = ''] = found
    return decimals(digits).map(plain => Number(sign + plain + power)).filter(Number.isFinite)
  }

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

  class SelfCheck extends HTMLElement {
    connectedCallback () {
      this.abort = new AbortController()
      const { signal } = this.abort
      this.form = this.querySelector('form')
      this.output = this.querySelector('output')
      this.box = this.form.querySelector('input[type="text"]')
      this.form.addEventListener('submit', event => this.answer(event), { signal })
      if (this.form.querySelector('button')) return
      const button = document.createElement('button')
      button.type = 'submit'
      button.className = 'check-button'
      button.textContent = 'Check'
      this.form.querySelector('fieldset').append(button)
    }

    disconnectedCallback () {
      this.abort.abort()
    }

    answer (event) {
      event.preventDefault()
      this.box ? this.answerNumber() : this.answerChoice()
    }

    answerChoice () {
      const picked = this.form.querySelector('input:checked')
      if (!picked) return this.say('Pick one of the options first.')
      this.mark(this.querySelector(`.feedback [data-option="${picked.value}"]`))
    }

    answerNumber () {
      const typed = this.box.value
      if (!typed.trim()) return this.say('Type a number first.')
      const numbers = readings(typed)
      if (!numbers.length) return this.say('That cannot be read as one number. Write it like 1234.5, 1234,5 or 1.2e3, without the unit.')
      const lines = [...this.querySelectorAll('.feedback li')]
      const known = lines.filter(line => line.dataset.low !== undefined)
      const fits = number => known.find(line => number >= Number(line.dataset.low) && number <= Number(line.dataset.high))
      const line = numbers.map(fits).find(found => found && found.dataset.right === 'true') || (numbers.length === 1 && fits(numbers[0]))
      if (!line && numbers.length > 1) return this.say(`Do you mean ${numbers.join(' or ')}? Write it without the comma.`)
      this.mark(line || lines[lines.length - 1])
    }

    mark (line) {
      const right = line.dataset.right === 'true'
      this.say(`${right ? RIGHT : WRONG} ${line.querySelector('.says').textContent}`, right ? 'right' : 'wrong')
      const detail = { question: this.dataset.question, right }
      this.dispatchEvent(new CustomEvent('self-check-answered', { bubbles: true, detail }))
    }

    say (text, verdict = '') {
      this.output.textContent = text
      this.output.dataset.verdict = verdict
    }
  }
  customElements.define('self-check', SelfCheck)
})()

// The same sum again with other numbers, for a <self-check> with data-fresh: the address of its record's script, which is
// loaded when it is first asked for. That script calls studyFresh(record, {says, sums}); sums[item] lists the variants, and says
// what slips are answered with: [feedback, what a reader who was sure is told before it, id of the misconception].
// After a worked example the next sums come with less and less help: numbers put in, formula only, nothing.
(function () {
  'use strict'
  const HELP = ['', 'formula', 'put'] // by how many steps of help are left
  const loaded = new Map()
  window.studyFresh = (record, data) => loaded.set(record, data)

  function load (source, record) {
    if (loaded.has(record)) return Promise.resolve(loaded.get(record))
    return new Promise((resolve, reject) => {
      const script = document.createElement('script')
      script.src = source
      script.onload = () => resolve(loaded.get(record))
      script.onerror = reject
      document.head.append(script)
    })
  }

  function button (text, form) {
    const made = document.createElement('button')
    made.type = 'button'
    made.className = 'check-button other'
    made.textContent = text
    form.querySelector('fieldset').append(' ', made)
    return made
  }

  function line (low, high, right, shown, [says, sure, slip]) {
    const item = document.createElement('li')
    if (low !== null) Object.assign(item.dataset, { low, high })
    if (slip) Object.assign(item.dataset, { sure, slip })
    item.dataset.right = String(right)
    item.innerHTML = `<strong>${shown}</strong>: ${right ? 'right' : 'not right'}. <span class="says">${says}</span>`
    return item
  }

  function attach (check, signal) {
    const [kind, name, item] = check.dataset.question.split('/')
    const record = `${kind}/${name}`
    const legend = check.querySelector('legend')
    const number = legend.querySelector('.check-number').outerHTML
    const answer = check.querySelector('.answer > div')
    const otherwise = answer.querySelector('.feedback > li:last-child .says').innerHTML
    let next = 0
    let help = 0

    const example = button('Show one worked out', check.form)
    const another = button('Another one', check.form)

    async function show (isExample) {
      let data
      try {
        data = await load(check.dataset.fresh, record)
      } catch {
        return check.say('The other numbers could not be loaded. The sum above is still there.')
      }
      const sums = data.sums[item]
      const sum = sums[next % sums.length]
      next += 1
      help = isExample ? HELP.length : Math.max(0, help - 1)
      legend.innerHTML = `${number} ${sum.ask}`
      check.querySelector('.needs').textContent = 'Answer from the numbers above.'
      check.querySelector('.hints')?.remove()
      check.form.querySelector('input').value = ''
      check.dataset.variant = String(next)
      const right = `${sum.formula} = ${sum.put} = ${sum.answer}`
      answer.innerHTML = `<p>${right}</p><ul class="feedback"></ul>`
      answer.querySelector('ul').append(
        line(sum.low, sum.high, true, sum.answer, [right]),
        ...sum.slips.map(([low, high, shown, says]) => line(low, high, false, shown, data.says[says])),
        line(null, null, false, 'Any other number', [otherwise])
      )
      check.querySelector('.answer').open = isExample
      helped(isExample ? '' : HELP[help], sum)
      check.say(isExample ? 'A worked example stands below. Then take another one yourself.' : 'New numbers stand above.')
    }

    function helped (kind, sum) {
      check.querySelector('.helped')?.remove()
      if (!kind) return
      const text = document.createElement('p')
      text.className = 'helped'
      text.innerHTML = kind === 'put' ? `${sum.formula} = ${sum.put} = ?` : `${sum.formula} = ?`
      check.querySelector('.needs').after(text)
    }

    example.addEventListener('click', () => show(true), { signal })
    another.addEventListener('click', () => show(false), { signal })
  }

  window.studyFreshNumbers = { attach }
})()

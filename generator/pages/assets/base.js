// What other scripts build with; its name puts it first. studyElements.element(name, text, attributes), button(text, act), counted(number, thing);
// script(address) → a promise of the script, which is loaded once; the address # means that it stands in the page already.
(function () {
  'use strict'
  function element (name, text = '', attributes = {}) {
    const made = Object.assign(document.createElement(name), { textContent: text })
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value)
    return made
  }

  function button (text, act, kind = 'other') {
    const made = element('button', text, { type: 'button', class: `check-button ${kind}`.trim() })
    made.addEventListener('click', act)
    return made
  }

  const counted = (number, thing) => `${number} ${thing}${number === 1 ? '' : 's'}`

  const scripts = new Map([['#', Promise.resolve()]])
  function script (address) {
    if (!scripts.has(address)) {
      scripts.set(address, new Promise((resolve, reject) => {
        const made = element('script', '', { src: address })
        made.onload = resolve
        made.onerror = () => {
          scripts.delete(address)
          reject(new Error(address))
        }
        document.head.append(made)
      }))
    }
    return scripts.get(address)
  }

  window.studyElements = { element, button, counted, script }
})()

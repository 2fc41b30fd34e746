// Makes elements: studyElements.element(name, text, attributes), button(text, act), counted(number, thing).
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

  window.studyElements = { element, button, counted }
})()

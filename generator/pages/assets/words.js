// Words in running text (a.word) tell their meaning where they stand: under the pointer, on focus, and on a first tap.
// A second tap, or Enter, follows the link to the list of words, as all do without this script.
(function () {
  'use strict'
  const note = document.createElement('div')
  note.id = 'word-note'
  note.setAttribute('role', 'tooltip')
  note.hidden = true
  let shown = null

  function show (word) {
    if (shown === word) return
    hide()
    shown = word
    note.textContent = word.dataset.means
    word.after(note)
    note.hidden = false
    word.setAttribute('aria-describedby', note.id)
    const over = note.getBoundingClientRect().right - document.documentElement.clientWidth + 8
    note.style.setProperty('--back', `${Math.max(0, over)}px`)
  }

  function hide () {
    if (!shown) return
    shown.removeAttribute('aria-describedby')
    shown = null
    note.hidden = true
    note.style.removeProperty('--back')
  }

  const wordOf = event => event.target.closest?.('a.word')
  document.addEventListener('focusin', event => (wordOf(event) ? show(wordOf(event)) : hide()))
  document.addEventListener('mouseover', event => {
    if (wordOf(event)) show(wordOf(event))
    else if (shown && !note.contains(event.target) && shown !== document.activeElement) hide()
  })
  let touched = null
  document.addEventListener('pointerdown', event => {
    touched = event.pointerType === 'touch' && wordOf(event) !== shown ? wordOf(event) : null
    if (!wordOf(event) && !note.contains(event.target)) hide()
  })
  document.addEventListener('click', event => {
    if (!touched || wordOf(event) !== touched) return
    event.preventDefault()
    show(touched)
    touched = null
  })
  document.addEventListener('keydown', event => { if (event.key === 'Escape') hide() })
})()

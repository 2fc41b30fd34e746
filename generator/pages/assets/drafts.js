// What a student has written and ticked in one written question, kept with the rest of the progress on this device.
//
// studyDrafts(question) → {text(name), list(name), number(name), change(name, value), flush()}: what was kept may be anything, so each
// reading says what it wants. Changes are kept after a pause in typing and when the page is left; only changed names
// are written, so that the same question in another tab loses nothing.
(function () {
  'use strict'
  const PAUSE = 400 // milliseconds
  const LONGEST = 20000 // characters of one answer

  function studyDrafts (question) {
    const name = `written/${question}`
    const changed = new Map()
    let waiting = 0

    const found = () => {
      const kept = window.studyProgress.remembered(name)
      return kept && typeof kept === 'object' && !Array.isArray(kept) ? kept : {}
    }
    const value = key => (changed.has(key) ? changed.get(key) : found()[key])

    function flush () {
      clearTimeout(waiting)
      if (!changed.size) return
      window.studyProgress.remembered(name, { ...found(), ...Object.fromEntries(changed) })
      if (window.studyProgress.isKept()) changed.clear()
      document.dispatchEvent(new CustomEvent('study-drafts'))
    }

    function change (key, now) {
      changed.set(key, typeof now === 'string' ? now.slice(0, LONGEST) : now)
      clearTimeout(waiting)
      waiting = setTimeout(flush, PAUSE)
    }

    addEventListener('pagehide', flush)
    document.addEventListener('visibilitychange', flush)
    return {
      change, flush,
      text: key => (typeof value(key) === 'string' ? value(key) : ''),
      list: key => (Array.isArray(value(key)) ? value(key).filter(one => typeof one === 'string') : []),
      number: key => (Number.isFinite(value(key)) ? value(key) : null)
    }
  }

  const made = new Map()
  window.studyDrafts = question => {
    if (!made.has(question)) made.set(question, studyDrafts(question))
    return made.get(question)
  }
})()

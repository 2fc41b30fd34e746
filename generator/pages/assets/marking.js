// The arithmetic of a marking guide. Nothing here looks at what a student wrote: people tick ideas, this adds them up.
//
// Lines are {id, marks, says}; `rule` is each, any, all or parts (set-up and answer; a right answer implies the set-up).
// studyMarking.total(lines, ticked, rule, worth) → marks; compared(lines, mine, teachers) → [{line, mine, teachers}].
(function () {
  'use strict'
  function total (lines, ticked, rule, worth) {
    const found = lines.filter(line => ticked.includes(line.id))
    if (rule === 'all') return found.length === lines.length ? worth : 0
    if (rule === 'parts' && found.some(line => line.id === 'answer')) return worth
    return Math.min(found.reduce((sum, line) => sum + line.marks, 0), worth)
  }

  function compared (lines, mine, teachers) {
    return lines.map(line => ({ line, mine: mine.includes(line.id), teachers: teachers.includes(line.id) }))
  }

  // What a line of the comparison says; no line is a mistake, for markers differ too.
  function told ({ line, mine, teachers }) {
    if (mine && teachers) return 'both of you find it.'
    if (teachers) return 'the teacher finds it, you did not.'
    if (mine) return `you found it, the teacher does not.${line.notEnough ? ` Not enough is: ${line.notEnough}` : ''}`
    return 'neither of you finds it.'
  }

  window.studyMarking = { total, compared, told }
})()

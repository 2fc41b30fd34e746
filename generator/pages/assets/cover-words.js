// <cover-words>: a table of words whose one column is covered until a cell is asked for. Without this script, and on paper,
// the table stands open, to be covered by hand.
(function () {
  'use strict'
  if (!('customElements' in window) || customElements.get('cover-words')) return

  class CoverWords extends HTMLElement {
    connectedCallback () {
      if (this.querySelector('.desk-row')) return
      this.rows = [...this.querySelectorAll('tbody tr')].map(row => [...row.cells])
      this.status = document.createElement('p')
      this.status.setAttribute('role', 'status')
      const row = document.createElement('p')
      row.className = 'desk-row screen-only'
      for (const [text, column] of [['Cover the meanings', 1], ['Cover the words', 0], ['Show both', -1]]) {
        row.append(window.studyElements.button(text, () => this.cover(column)))
      }
      this.prepend(row, this.status)
    }

    cover (column) {
      for (const cells of this.rows) {
        cells.forEach((cell, place) => {
          this.uncover(cell)
          if (place === column) this.hide(cell, cells[1 - place].textContent)
        })
      }
      this.status.textContent = column < 0 ? 'Both columns are shown.' : `${this.rows.length} ${column ? 'meanings' : 'words'} are covered.`
    }

    hide (cell, beside) {
      const held = document.createElement('span')
      held.className = 'held'
      held.append(...cell.childNodes)
      const button = document.createElement('button')
      button.type = 'button'
      button.className = 'uncover'
      button.textContent = 'Look'
      button.setAttribute('aria-label', `Look: ${beside.trim()}`)
      button.addEventListener('click', () => {
        button.setAttribute('aria-expanded', String(held.hidden))
        held.hidden = !held.hidden
        button.textContent = held.hidden ? 'Look' : 'Hide'
      })
      button.setAttribute('aria-expanded', 'false')
      held.hidden = true
      cell.append(button, ' ', held)
    }

    uncover (cell) {
      const held = cell.querySelector('.held')
      if (held) cell.replaceChildren(...held.childNodes)
    }
  }

  customElements.define('cover-words', CoverWords)
})()

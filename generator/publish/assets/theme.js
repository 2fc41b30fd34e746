// What the theme does for the mouse only, made to work by keyboard.
(function () {
  'use strict'
  if (!document.querySelector('.md-header')) return // a file that stands alone has nothing of the theme
  const NAMES = { __drawer: 'Pages', __search: 'Search' }

  // On a narrow page navigation and search open by labels, which no keyboard reaches.
  // Each gets a button in its place; without scripts the labels stay.
  function replace (label) {
    const toggle = document.getElementById(label.htmlFor)
    const button = document.createElement('button')
    button.type = 'button'
    button.className = label.className
    button.dataset.opens = toggle.id
    button.setAttribute('aria-label', NAMES[toggle.id])
    label.replaceWith(button)

    const tell = () => button.setAttribute('aria-expanded', String(toggle.checked))
    button.addEventListener('click', () => toggle.click())
    toggle.addEventListener('change', tell)
    tell()
    return { toggle, button }
  }

  const [navigation, search] = Object.keys(NAMES).map(id => replace(document.querySelector(`.md-header label[for="${id}"].md-header__button`)))
  search.toggle.addEventListener('change', () => {
    if (search.toggle.checked) document.querySelector('.md-search__input').focus()
  })
  document.addEventListener('keydown', event => {
    if (event.key !== 'Escape' || !navigation.toggle.checked) return
    navigation.toggle.click()
    navigation.button.focus()
  })

  // The theme puts wide tables into boxes that scroll: arrow keys scroll what has the focus.
  function letScroll () {
    for (const box of document.querySelectorAll('.md-typeset__scrollwrap')) {
      if (box.scrollWidth > box.clientWidth) box.tabIndex = 0
      else box.removeAttribute('tabindex')
    }
  }
  window.addEventListener('load', letScroll)
  window.addEventListener('resize', letScroll)
  document.addEventListener('toggle', letScroll, true) // a table in a closed box has no width yet
})()

;(function () {
  // Where nothing is found, the search says what to try and where to go on.
  'use strict'
  const ways = window.SEARCH_WAYS

  function help (base) {
    const box = document.createElement('div')
    box.className = 'search-help md-typeset'
    box.hidden = true
    const tip = document.createElement('p')
    tip.textContent = 'Try fewer letters, such as the beginning of the word, or one word in place of several. Or go on from here:'
    const list = document.createElement('ul')
    for (const [title, address] of ways) {
      const link = document.createElement('a')
      link.href = new URL(address, base)
      link.textContent = title
      const item = document.createElement('li')
      item.append(link)
      list.append(item)
    }
    box.append(tip, list)
    return box
  }

  document.addEventListener('DOMContentLoaded', () => {
    const meta = document.querySelector('.md-search-result__meta')
    const config = document.getElementById('__config')
    if (!meta || !config) return
    const { base, translations } = JSON.parse(config.textContent)
    const box = help(new URL(`${base}/`, location))
    meta.closest('.md-search-result').after(box) // the theme's Enter takes every link inside for a result
    meta.setAttribute('role', 'status')
    const show = () => { box.hidden = meta.textContent.trim() !== translations['search.result.none'] }
    new MutationObserver(show).observe(meta, { childList: true, characterData: true, subtree: true })
    // The theme shows the sort of a page in a <nav>, one in each result; they lead nowhere.
    const list = document.querySelector('.md-search-result__list')
    const tame = () => { for (const tags of list.querySelectorAll('nav.md-tags:not([role])')) tags.setAttribute('role', 'none') }
    new MutationObserver(tame).observe(list, { childList: true, subtree: true })
  })
})()

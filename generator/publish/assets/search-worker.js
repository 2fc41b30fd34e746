;(function () {
  // The theme starts its search with every page. Here engine and index, which weigh more than the page, come when a reader
  // turns to the search, as scripts: those are loaded from a folder too, where a browser starts no worker from a file.
  'use strict'
  const THEME_SETUP = 0, THEME_QUERY = 2 // the theme's own numbers for its messages
  const Native = window.Worker
  const here = document.currentScript.src

  // Formulas as in the index: CO₂ is CO2, NO₃⁻ is NO3.
  const plain = query => query.normalize('NFKC').replace(/(\w)[+\u2212-]+(?=\s|$)/g, '$1')
  // A word as it is finds beginnings of words, a word with a weight finds its inflections.
  const bothForms = query => /["*:^~+-]/.test(query) ? query : query.replace(/\S+/g, '$& $&^1')

  function script (address) {
    return new Promise((resolve, reject) => {
      const made = document.createElement('script')
      made.src = new URL(address, here)
      made.onload = resolve
      made.onerror = () => reject(new Error(address))
      document.head.append(made)
    })
  }

  // The theme's switch is on: the box has the focus, or an address brought a query.
  const turnedTo = new Promise(resolve => {
    const isOn = toggle => toggle && toggle.id === '__search' && toggle.checked
    document.addEventListener('change', event => { if (isOn(event.target)) resolve() })
    document.addEventListener('DOMContentLoaded', () => { if (isOn(document.getElementById('__search'))) resolve() })
  })

  async function complete (message) {
    if (message.type === THEME_QUERY) return { ...message, data: bothForms(plain(message.data)) }
    if (message.type !== THEME_SETUP || message.data.docs.length) return message
    await script('../search/search_index.js')
    return { ...message, data: { ...message.data, docs: window.__index.docs } }
  }

  class LateWorker extends EventTarget {
    constructor () {
      super()
      this.last = turnedTo.then(() => script('search-engine.js')).then(() => this.start())
    }

    start () {
      this.worker = new Native(URL.createObjectURL(new Blob([window.SEARCH_ENGINE], { type: 'text/javascript' })))
      this.worker.addEventListener('message', ({ data }) => this.dispatchEvent(new MessageEvent('message', { data })))
    }

    postMessage (message) { // one after the other, in the order in which the theme sends them
      this.last = this.last.then(async () => this.worker.postMessage(await complete(message)))
    }
  }

  window.Worker = new Proxy(Native, {
    construct: (target, [url, ...rest]) => /\/search\.[^/]*\.js$/.test(url) ? new LateWorker() : new target(url, ...rest)
  })
})()

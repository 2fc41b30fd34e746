;(function () {
  // The line above this file is the theme's worker as text; it ends without a semicolon.
  'use strict'
  const source = window.SEARCH_WORKER_SOURCE
  const THEME_QUERY = 2 // the theme's own number for a message that holds a query

  // Formulas as in the index: CO₂ is CO2, NO₃⁻ is NO3.
  const plain = query => query.normalize('NFKC').replace(/(\w)[+\u2212-]+(?=\s|$)/g, '$1')
  // A word as it is finds beginnings of words, a word with a weight finds its inflections.
  const bothForms = query => /["*:^~+-]/.test(query) ? query : query.replace(/\S+/g, '$& $&^1')

  window.Worker = class extends window.Worker {
    constructor (url, options) {
      const ours = location.protocol === 'file:' && /\/search\.[^/]*\.js$/.test(url)
      super(ours ? URL.createObjectURL(new Blob([source], { type: 'text/javascript' })) : url, options)
    }

    postMessage (message, ...rest) {
      const isQuery = message && message.type === THEME_QUERY
      super.postMessage(isQuery ? { ...message, data: bothForms(plain(message.data)) } : message, ...rest)
    }
  }
})()

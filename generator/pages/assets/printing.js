// Below a page with answers: two ways to print it. ?answers behind the address does the same for the browser's own command.
(function () {
  'use strict'
  const page = document.querySelector('.md-content__inner')
  const withAnswers = on => document.body.classList.toggle('with-answers', on)
  const asked = new URLSearchParams(location.search).has('answers')
  if (asked) withAnswers(true)
  if (!page || !page.querySelector('.answer') || page.querySelector('written-part')) return // guides of written questions have their own print
  const ways = document.createElement('p')
  ways.className = 'print-ways screen-only'
  ways.append('Print this page: ')
  for (const [name, on] of [['without answers', false], ['with answers', true]]) {
    const button = document.createElement('button')
    button.type = 'button'
    button.textContent = name
    button.addEventListener('click', () => {
      withAnswers(on)
      print()
    })
    ways.append(button, ' ')
  }
  addEventListener('afterprint', () => withAnswers(asked))
  page.append(ways)
})()

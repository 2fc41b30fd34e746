// Hints for a written answer: questions that a teacher would ask while looking over a shoulder. Never a mark: a script cannot tell
// whether the science holds. Nothing here touches the page.
//
// studyCoaching.hints(text, task) → [{rule, quote, says}], at most six, the most useful first. `quote` is a piece of the text as typed, or
// empty where a hint is about what is not there. `task` is what generator/written/coaching.py makes of a part.
// studyCoaching.standing is the sentence to show with them, always.
// studyCoachingWords([{words, ask, unless, topics}]) brings the vague words of the course; without it none are asked about.
(function () {
  'use strict'
  const STANDING = 'This is not a mark. The page cannot tell whether your science is right. Compare with the guide or ask your teacher.'
  const ORDER = ['parts', 'echo', 'data', 'comparison', 'links', 'direction', 'vague', 'pronoun', 'unit', 'terms', 'sentences']
  const MOST = 6
  const MOST_VAGUE = 3
  const MOST_TERMS = 2
  const LONGEST = 20000
  const ECHO = 0.6
  const FEWEST_TO_ECHO = 4
  const OPENING = 6
  const COUNTS = 'no one two three four five six seven eight nine ten'.split(' ')
  const set = words => new Set(words.trim().split(/\s+/))
  const any = words => `(?:${words.trim().split(/\s+/).join('|')})`
  const MONTHS = set('january february march april may june july august september october november december')

  // Which rules fit which command words.
  const NAMING = set('identify state list label read_off define calculate draw')
  const NOT_ECHOED = set('identify state list label read_off define calculate draw estimate compare distinguish')
  const JOINED = set('explain justify')
  const PAIRED = set('compare distinguish')
  const PROPOSING = set('suggest propose')
  const WITH_DIRECTION = set('explain describe predict interpret give_a_reason justify discuss evaluate conclude suggest propose outline')

  // The text as read: plain signs in place of indices and curly marks, one for one, so that places stay; words; sentences.
  const WORD = /\d+(?:[.,]\d+)*|[\p{L}°%][\p{L}\p{N}]*(?:['-][\p{L}\p{N}]+)*/gu
  const SHORTENED = /(?:^|[\s(])(?:e\.g|i\.e|approx|ca|etc|vs|fig|no|\d{1,2})$/i

  function read (typed) {
    const text = String(typed ?? '').slice(0, LONGEST)
    const plain = text.replace(/[₀-₉]/g, sign => String(sign.charCodeAt(0) - 0x2080)).replace(/[’‘]/g, "'").replace(/[\u00a0\u2009\u202f]/g, ' ')
    const words = [...plain.matchAll(WORD)].map(found => ({ at: found.index, end: found.index + found[0].length, raw: found[0], low: found[0].toLowerCase() }))
    const sentences = []
    let from = 0
    let next = 0
    for (const found of [...plain.matchAll(/[.!?]+(?=["')\]]*(?:\s|$))|\n/g), { index: plain.length, 0: '' }]) {
      if (found[0] === '.' && SHORTENED.test(plain.slice(Math.max(0, found.index - 8, from), found.index)) && /^\.\s+\S/.test(plain.slice(found.index, found.index + 8)) && !/\p{L}\s+\d+$/u.test(plain.slice(Math.max(from, found.index - 12), found.index))) continue
      const to = found.index + found[0].length
      const inside = []
      while (next < words.length && words[next].at < to) inside.push(words[next++])
      if (inside.length) sentences.push({ from, to, plain: plain.slice(from, to), words: inside })
      from = to
    }
    return { text, plain, words, sentences }
  }

  function opening (answer) {
    const { from, to } = answer.sentences[0]
    const found = new RegExp(`\\S+(?:[^\\S\\n]+\\S+){0,${OPENING - 1}}`).exec(answer.text.slice(from, to))
    return found[0].replace(/[\s.,;:!?…]+$/, '')
  }

  const quoted = quote => `“${quote}”`
  const begun = (answer, quote) => (answer.words.length > OPENING ? `“${quote} …”` : quoted(quote))

  // Stems: a rough common part of words such as respire, respires and respiration.
  function stem (word) {
    return word.replace(/'s?$/, '')
      .replace(/^(.{3,}?)(?:[aeiou]?tions?|ions?|at(?:e|es|ed|ing|ors?)|ings?|ers?|ors?|ies|ed|es|ly|al|s|e|y)$/, '$1')
      .replace(/([b-df-hj-np-tv-z])\1$/, '$1')
  }

  const stems = words => new Set(words.flatMap(word => word.low.split('-')).map(stem))
  const EMPTY = set(`a an the this that these those it its they them their he she we you i and or but so because as than which who whose while
    whereas when where if then there here is are was were be been being has had have do does did will would can could may might must should
    not no in on at of by to from for with without into onto out off over under very much also too only just explain describe
    discuss justify suggest propose predict evaluate how why what`)

  // Vague words.
  let vague = new Map()
  const phrase = text => text.toLowerCase().replace(/’/g, "'").split(' ')

  window.studyCoachingWords = entries => {
    vague = new Map()
    for (const entry of entries) {
      const made = { ask: entry.ask, unless: (entry.unless || []).map(phrase), topics: entry.topics || [] }
      for (const words of entry.words.map(phrase)) {
        if (!vague.has(words[0])) vague.set(words[0], [])
        vague.get(words[0]).push({ words, entry: made, length: words.join(' ').length })
      }
    }
  }

  function fits (pattern, word) {
    if (pattern === '#') return /^\d/.test(word)
    return pattern.endsWith('*') ? word.startsWith(pattern.slice(0, -1)) : pattern === word
  }

  function holds (words, pattern) {
    return words.some((_, at) => at + pattern.length <= words.length && pattern.every((one, n) => fits(one, words[at + n].low)))
  }

  // Every expression in the text, the longest first where they meet, whether it is precise where it stands or not.
  function expressions (answer, topic) {
    const found = []
    for (const sentence of answer.sentences) {
      sentence.words.forEach((word, at) => {
        for (const { words, entry, length } of vague.get(word.low) || []) {
          if (entry.topics.length && !entry.topics.includes(topic)) continue
          if (words.every((one, n) => sentence.words[at + n]?.low === one)) found.push({ sentence, at, words: words.length, entry, length })
        }
      })
    }
    const taken = new Set()
    return found.sort((one, other) => other.length - one.length).filter(({ sentence, at, words }) => {
      const held = sentence.words.slice(at, at + words)
      if (held.some(word => taken.has(word))) return false
      held.forEach(word => taken.add(word))
      return true
    }).map(one => ({ ...one, from: one.sentence.words[one.at].at, to: one.sentence.words[one.at + one.words - 1].end })).sort((one, other) => one.from - other.from)
  }

  function vagueHints (answer, met) {
    const asked = new Set()
    const known = new Map()
    const precise = ({ sentence, entry }) => {
      if (!known.has(sentence)) known.set(sentence, new Map())
      const inside = known.get(sentence)
      if (!inside.has(entry)) inside.set(entry, entry.unless.some(pattern => holds(sentence.words, pattern)))
      return inside.get(entry)
    }
    return met.filter(one => !precise(one) && !asked.has(one.entry) && asked.add(one.entry)).slice(0, MOST_VAGUE).map(({ from, to, entry }) => {
      const quote = answer.text.slice(from, to)
      return { rule: 'vague', quote, says: `You wrote ${quoted(quote)}. ${entry.ask}` }
    })
  }

  // As many things as are asked for: counted generously, by lines, sentences, commas and “and”.
  const BETWEEN = /[,;]|\(\d\)|\b(?:and|or|second|secondly|as well as|plus)\b/i

  function partsHint (answer, task) {
    if (!(task.asked > 1)) return []
    const items = answer.sentences.flatMap(one => one.plain.split(BETWEEN)).filter(piece => /\p{L}/u.test(piece)).length
    if (items >= task.asked) return []
    const quote = opening(answer)
    return [{ rule: 'parts', quote, says: `${begun(answer, quote)} seems to be ${COUNTS[items] || items}, and ${COUNTS[task.asked] || task.asked} are asked for. What else?` }]
  }

  function echoHint (answer, task) {
    if (NOT_ECHOED.has(task.command)) return []
    const own = stems(answer.words.filter(word => !EMPTY.has(word.low)))
    const given = stems(read(task.prompt).words)
    const shared = [...own].filter(one => given.has(one)).length
    if (own.size < FEWEST_TO_ECHO || shared <= ECHO * own.size) return []
    const quote = opening(answer)
    return [{ rule: 'echo', quote, says: `Most words of ${begun(answer, quote)} come from the question. Add what happens, and why.` }]
  }

  const QUANTITY = /\b(?:twice|double[ds]?|half|halves|third|thirds|quarter|quarters|fifth|tenth|three|four|five|six|seven|eight|nine|ten|eleven|twelve|twenty|hundred|thousand|million|zero)\b/i

  function dataHint (answer, task) {
    if (!task.data) return []
    const given = new Set(read(task.prompt).words.map(word => word.low))
    const read_off = answer.words.some(word => /^\d/.test(word.low) || (MONTHS.has(word.low) && !given.has(word.low)))
    if (read_off || QUANTITY.test(answer.plain)) return []
    const quote = opening(answer)
    return [{ rule: 'data', quote, says: `${begun(answer, quote)}: which value shows that? Quote it with its unit.${task.condition ? ` The condition is ${quoted(task.condition)}.` : ''}` }]
  }

  const COMPARED = new RegExp(`\\b(?:more|less|fewer|most|least|than|whereas|while|both|but|yet|although|however|unlike|like|alike|same|similar|equal(?:ly)?|neither|compared|contrast|instead|other hand|twice|half|times as|against|as [\\p{L}]+ as|${any('high low large small big great warm cold cool dry wet deep shallow fast slow long short earl lat old young dens thick thin strong weak clos wid narrow bright dark')}i?er)\\b|;`, 'iu')

  function comparisonHint (answer, task) {
    if (!PAIRED.has(task.command) || COMPARED.test(answer.plain)) return []
    const quote = opening(answer)
    return [{ rule: 'comparison', quote, says: `After ${begun(answer, quote)}, put both things into one sentence, with a word such as whereas, both or more than.` }]
  }

  const LINK = /\b(?:because|therefore|thus|hence|consequently|as a result|since|due to|owing to|leads? to|led to|leading to|results? in|resulted in|resulting|causes?|caused|causing|means that|this means|which means|lets?|allows?|prevents?|in order to|why|if|when|once|unless|until|otherwise|without|for this reason|so(?! (?:much|many|few|little|dry|hot|cold|warm|wet|big|small|high|low|deep|far|long|fast|strong|dark|called)\b)|so \S+ that|by \p{L}+ing)\b|, (?:which|for|as|so|\p{L}+ing)\b|:\s/iu

  function linksHint (answer, task) {
    if (!JOINED.has(task.command) || answer.words.length < FEWEST_TO_ECHO || LINK.test(answer.plain)) return []
    const quote = opening(answer)
    return [{ rule: 'links', quote, says: `In ${begun(answer, quote)}, join cause and effect: because, so, or which leads to. What comes from what?` }]
  }

  const CHANGE = /\b(?:changes?|changed|changing|vary|varies|varied|varying|fluctuates?|fluctuated)\b/gi
  const DIRECTION = /\b(?:increas\p{L}*|decreas\p{L}*|rise[sn]?|rising|rose|fall[s]?|falling|fallen|fell|drop\p{L}*|gr[eo]w\p{L}*|shrink\p{L}*|shrank|sink\p{L}*|sank|more|less|fewer|twice|half|double\p{L}*|halve\p{L}*|gain\p{L}*|los[est]\p{L}*|up|upwards?|down|downwards?|reduc\p{L}*|rais\p{L}*|lower\p{L}*|warm(?:s|ed|ing|er)|cool(?:s|ed|ing|er)|melt\p{L}*|thaw\p{L}*|acidif\p{L}*|(?:high|fast|slow|cold|hott|dri|wett|larg|small|bigg|short|long|deep|shallow|dens|earli|lat|strong|weak|thick|thinn)er)\b|\bfrom [^.\d]{0,30}\d[^.]{0,40}?\bto [^.\d]{0,30}\d|\b(?:constant|same|unchanged)\b|(?:\b(?:no|not|never|hardly|without)|n't) (?:chang|vary)/iu

  const BESIDE = /\b(?:when|if|because|since|after|once|before)\b[^,;:]*/gi

  function directionHint (answer, task, met) {
    if (!WITH_DIRECTION.has(task.command)) return []
    for (const sentence of answer.sentences) {
      if (DIRECTION.test(sentence.plain.replace(BESIDE, ''))) continue
      for (const found of sentence.plain.matchAll(CHANGE)) {
        const at = sentence.from + found.index
        const end = at + found[0].length
        if (met.some(one => one.from <= at && at < one.to) || /^ (?:into|to|from)\b/.test(answer.plain.slice(end, end + 6))) continue
        const quote = answer.text.slice(at, end)
        return [{ rule: 'direction', quote, says: `${quoted(quote)}: up or down, more or less, faster or slower?` }]
      }
    }
    if (task.command !== 'predict' || met.length || DIRECTION.test(answer.plain)) return []
    const quote = opening(answer)
    return [{ rule: 'direction', quote, says: `After ${begun(answer, quote)}, say which way it goes: up or down, more or less?` }]
  }

  // Words that leave open what they stand for.
  const VERB = any(`is are was were will would can could may might must should does did do has had have means meant makes made leads led causes caused shows
    showed happens happened gives gave helps lets keeps kills reduces lowers raises increases decreases affects also then only allows stops slows
    changes takes took leaves goes went comes came becomes became turns uses adds prevents brings warms cools removes explains occurs starts results
    washes drains flows runs rises falls dies grows needs contains holds`)
  const PLAIN_VERB = any(`are were will would can could may might must should did do had have mean meant make made lead led cause caused show showed happen
    give gave help let keep kill reduce lower raise affect also then only allow stop slow take took leave go went come came become became turn
    use add prevent bring warm cool remove explain occur start live die eat grow need get break respire rise fall sink hold contain`)
  // At the beginning of an answer nothing has been named yet, whatever word comes before “it”; “because it …” may be taken up behind a comma.
  const LEAD = '(?:and |but )?'
  const FIRST_LEAD = '(?:(?:and|but|also|so|then|thus|hence|therefore|however|as a result|for this reason),? |because (?=[^,]*$)|(?:in|at|on|by|during|after|before) (?:the )?\\p{L}+,? (?=it\\b|they\\b))?'
  const unnamed = lead => new RegExp(`^(?<lead>[\\s"'“(]*${lead})(?:(?<thing>it|they)\\b(?!,| \\()|(?<one>this|that)(?=\\s*,|\\s+${VERB}\\b)(?! is (?:why|because|how))|(?<many>these|those)(?=\\s*,|\\s+${PLAIN_VERB}\\b))(?:'\\p{L}+)?(\\s+[\\p{L}']+)?`, 'iu')
  const BE = `(?:'s| is| was| gets| got| becomes| became| stays| remains| (?:will|would|could|may|might|must|can) be| ha[sd] been)`
  const ADVERBS = `(?: (?:too|so|very|still|also|not|quite|already|only|mostly|more|really|now|about|nearly|hardly|rarely|seldom|never|ever|often|sometimes|usually|always))*`
  const STATES = any(`warm warmer hot hotter cold colder cool cooler dry drier wet wetter dark darker light bright summer winter spring autumn day night
    early late likely possible impossible clear known true important necessary one two`)
  const nothing = lead => new RegExp(`^\\W*${lead}it(?:${BE}${ADVERBS} (?:${STATES}\\b|\\d[\\d.,]* ?(?:°|degrees))|(?:${BE}|${ADVERBS}| d(?:oes|id)(?: not|n't))${ADVERBS} (?:rain|snow|freez)(?:e|s|es|ed|ing)?\\b|
    ${ADVERBS} follows that| takes (?:\\d|about|many|long|several|years|time|\\p{L}+ to )| (?:helps|pays|makes sense) to |
    (?: seems| appears| turns? out|${BE}(?: \\p{L}+)?| (?:could|may|might) be) that\\b|${BE}${ADVERBS} (?!used |able |unable |going |ready |left |meant |needed |supposed |close |similar |next )\\p{L}+ (?:for [^,.]{1,40} )?to \\p{L}|
    (?:'s| is| was)(?: not| only| also)? (?!an? )(?=.*\\bthat\\b))`.replace(/\n\s*/g, ''), 'iu')
  const [UNNAMED, UNNAMED_FIRST] = [LEAD, FIRST_LEAD].map(unnamed)
  const [NO_THING, NO_THING_FIRST] = [LEAD, FIRST_LEAD].map(nothing)

  function pronounHint (answer, task) {
    if (NAMING.has(task.command)) return []
    for (const sentence of answer.sentences) {
      const [named, start] = [sentence !== answer.sentences[0], sentence.plain.slice(0, 200)]
      const actors = PROPOSING.has(task.command) && !named && /^\W*they (?:should|could|can|may|might|must)\b/i.test(start)
      const isNothing = (named ? NO_THING : NO_THING_FIRST).test(start)
      const found = actors || isNothing ? null : (named ? UNNAMED : UNNAMED_FIRST).exec(start)
      if (found) {
        const { lead, thing, one, many } = found.groups
        const pronoun = thing || one || many
        const quote = answer.text.slice(sentence.from + lead.length, sentence.from + found[0].length).trim()
        const ask = thing ? 'Name the thing.' : `A noun helps, as in “${pronoun.toLowerCase()} rise in …”.`
        return [{ rule: 'pronoun', quote, says: `In ${quoted(quote)}, what does ${quoted(pronoun)} stand for? ${ask}` }]
      }
      const many = sentence.words.filter(word => /^(?:it|they|them)$/.test(word.low))
      if (many.length > 2) {
        const quote = answer.text.slice(many[0].at, many[0].end)
        return [{ rule: 'pronoun', quote, says: `One sentence says ${quoted(quote)} and the like ${COUNTS[many.length] || many.length} times. Name the thing at least once.` }]
      }
    }
    return []
  }

  // Numbers without a unit: neither a unit nor a thing that is counted follows, and nothing says that none is needed.
  const NUMBER = /(?<![\p{L}\p{N}_]|\d[.,])(?:\d{1,3}(?: \d{3})+(?!\d)|\d+)(?:[.,]\d+)*/gu
  const NO_UNIT = set(`in on at of by to from for with without and or but so because as than that which who while whereas when where if then there here is
    are was were be been has had have do does did will would can could may might must should not no the a an this these those it they its their near
    below above under over between during after before until since into onto through across each every later now again only also too against versus
    instead compared about up down out off respectively therefore thus however yet both all what falls rises runs drops goes grows arrives shows
    means gives makes leaves comes enters flows remains stays becomes reaches lies stands equals adds gets passed run fell rose`)
  const NUMBERED = /(?:[$€£]|\b(?:parts?|figure|fig|table|steps?|levels?|stations?|stage|question|number|chapter|page|group|box|plot|layer|sample|trial|day|week|month|year)\.?\s(?:\d+\s?(?:,|and|to|or|–|-)\s?)?|\b(?:ratio|factor|index|pH|efficiency|probability|albedo)(?:\s[\p{L}\d.,]+){0,4}\s|\b(?:Jan|Febr)uary\s|\b(?:March|April|May|June|July|August)\s|(?:em|o)ber\s|\d\s?:\s?|\d\s(?:in|out of)\s)$/iu
  const YEAR = /(?:\b(?:in|since|from|until|by|before|after|between|year|around|during|(?:summer|winter|spring|autumn|drought|flood|fires?) of)|(?:1[5-9]|20)\d\d\s?(?:to|and|or|–|-))\s?$/i
  const CARRIES = /^[\s()]*(?:to|and|or|of|against|versus|instead of|–|-|—|\+|−|±|,|, and|×|x|\*)[\s()]*$/i

  function withUnit (plain, at, end) {
    const number = plain.slice(at, end)
    const before = plain.slice(Math.max(0, at - 48), at)
    const after = plain.slice(end, end + 40)
    const word = /^[\s)\-–]*([\p{L}µ°%‰€$£][\p{L}µ°]*)/u.exec(after)
    if (word && !NO_UNIT.has(word[1].toLowerCase())) return true
    if (NUMBERED.test(before) || /^\s?:\s?\d|^ (?:in|out of)(?: every)? \d/.test(after)) return true
    if (/^(?:1[5-9]|20)\d\d$/.test(number) && YEAR.test(before)) return true
    const small = /^\d{1,2}$/.test(number)
    if (small && (/^ (?:in|of|for|at|on) (?:each|every)\b/.test(after) || /^\/\d{1,2}\b/.test(after) || /\d\/$/.test(before))) return true
    if (small && (/(?:^|\n)\s*\(?$/.test(plain.slice(0, at).slice(-4)) || /\($/.test(before)) && /^[.)]\s?\D/.test(after)) return true
    return /([\p{L}%°][^÷=]{0,24}?)\s?(?:÷|\/|:)\s?[\d.,]+\s?\1\s?=\s?$/u.test(before)
  }

  function unitHint (answer, task) {
    if (task.command === 'draw') return []
    const numbers = [...answer.plain.matchAll(NUMBER)].map(found => [found.index, found.index + found[0].length])
    let first = null
    let carried = false
    for (let n = numbers.length - 1; n >= 0; n -= 1) {
      const [at, end] = numbers[n]
      const next = numbers[n + 1] ? answer.plain.slice(end, numbers[n + 1][0]) : ''
      const divided = n > 0 && /[÷/:]/.test(answer.plain.slice(numbers[n - 1][1], at))
      carried = withUnit(answer.plain, at, end) || (carried && next.length < 20 && (CARRIES.test(next) || (!divided && /^[\s()]*=[\s()]*$/.test(next))))
      if (!carried) first = numbers[n]
    }
    if (!first) return []
    const quote = answer.text.slice(...first)
    return [{ rule: 'unit', quote, says: `${quoted(quote)}: in which unit, or of what? A number says more with its unit.` }]
  }

  function termsHint (answer, task) {
    const bank = task.terms || []
    const own = stems(answer.words)
    const raw = new Set(answer.words.map(word => word.raw))
    const says = term => (/^[A-Z0-9]{2,4}$/.test(term) ? raw.has(term) : term.toLowerCase().split(/[\s-]+/).every(word => own.has(stem(word))))
    const missing = bank.filter(({ term, also }) => ![term, ...(also || [])].some(says)).map(({ term }) => quoted(term))
    if (task.needs === 'data' || PROPOSING.has(task.command) || !missing.length || 2 * missing.length <= bank.length) return []
    return [{ rule: 'terms', quote: '', says: `Could you use ${missing.slice(0, MOST_TERMS).join(' or ')}?` }]
  }

  const JOINER = /(?:(?<!\d),\s*)?\b(?:and|but|so|because|since|therefore|thus|hence|while|whereas|which|when|if|until|although|without|causes?|leads?)\b|(?<!\d),|[;:]/gi

  function sentencesHint (answer, task) {
    const written = answer.sentences.length
    if (!(task.fewest > 1) || written + (answer.plain.match(JOINER) || []).length >= task.fewest) return []
    const quote = opening(answer)
    return [{ rule: 'sentences', quote, says: `${quoted(task.verb)} usually takes ${COUNTS[task.fewest] || task.fewest} ideas, joined. So far there ${written === 1 ? 'is one sentence' : `are ${COUNTS[written] || written}`}: ${begun(answer, quote)}.` }]
  }

  function hints (text, task) {
    const answer = read(text)
    if (!answer.sentences.length) return []
    const met = expressions(answer, task.topic)
    const whole = [...partsHint(answer, task), ...echoHint(answer, task), ...comparisonHint(answer, task), ...linksHint(answer, task)]
    const found = [
      ...whole, ...dataHint(answer, task), ...directionHint(answer, task, met), ...vagueHints(answer, met), ...pronounHint(answer, task), ...unitHint(answer, task),
      ...termsHint(answer, task), ...(whole.length ? [] : sentencesHint(answer, task))
    ]
    return found.sort((one, other) => ORDER.indexOf(one.rule) - ORDER.indexOf(other.rule)).slice(0, MOST)
  }

  window.studyCoaching = { hints, standing: STANDING }
})()

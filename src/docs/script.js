/*
 * Runs in the page that describes the paths: sends what stands in a form, and shows what comes back.
 */
for (const form of document.querySelectorAll('form')) {
  const [choice, body, answer] = ['select', 'textarea', 'pre'].map((name) => form.querySelector(name))

  choice?.addEventListener('change', () => {
    body.value = choice.value
  })

  form.addEventListener('submit', async (event) => {
    event.preventDefault()
    answer.hidden = false
    answer.textContent = '…'
    try {
      const headers = { 'content-type': 'application/json' }
      const reply = await fetch(form.action, { method: 'POST', headers, body: body.value })
      const text = await reply.text()
      const isJson = /json/.test(reply.headers.get('content-type'))
      answer.textContent = `${reply.status}\n${isJson ? JSON.stringify(JSON.parse(text), null, 2) : text}`
    } catch (error) {
      answer.textContent = String(error)
    }
  })
}

/** A link leads to a shape that may be folded. */
const unfold = () => {
  const target = document.getElementById(location.hash.slice(1))
  if (target instanceof HTMLDetailsElement) target.open = true
}
addEventListener('hashchange', unfold)
unfold()

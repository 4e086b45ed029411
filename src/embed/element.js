/*
 * A custom element for pages of others: <racewright-bearing view="assembly" units="mm" balls.count="14" …>. Its attributes are the
 * names of a query; the service fills them in below. It shows the view in a frame that is as high as what is in it.
 */
{
  const NAMES = '{{names}}'.split(' ')
  const VIEW = '{{view}}'
  const base = document.currentScript.src

  class BearingElement extends HTMLElement {
    #frame = document.createElement('iframe')
    #changes = new MutationObserver(() => this.#show())

    constructor() {
      super()
      this.#frame.setAttribute('sandbox', 'allow-scripts allow-forms')
      Object.assign(this.#frame.style, { display: 'block', width: '100%', border: '0' })
      this.attachShadow({ mode: 'open' }).append(this.#frame)
    }

    connectedCallback() {
      addEventListener('message', this.#listen)
      this.#changes.observe(this, { attributes: true })
      this.#show()
    }

    disconnectedCallback() {
      removeEventListener('message', this.#listen)
      this.#changes.disconnect()
    }

    #show() {
      const query = new URLSearchParams()
      for (const name of NAMES) if (this.hasAttribute(name)) query.set(name, this.getAttribute(name))
      const address = new URL(`${this.getAttribute('view') ?? VIEW}?${query}`, base).href
      this.#frame.title = this.title
      if (this.#frame.src !== address) this.#frame.src = address
    }

    #listen = ({ source, data }) => {
      if (source === this.#frame.contentWindow && data?.type === 'racewright:height')
        this.#frame.style.height = `${data.height}px`
    }
  }

  customElements.get('racewright-bearing') ?? customElements.define('racewright-bearing', BearingElement)
}

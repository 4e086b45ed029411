import { type ComponentChildren, options, type VNode } from 'preact'
import { later } from './second-script.ts'

/** Lays out every text of the page so that no line ends between a figure and its unit. What a maker types stays as it is. */
export function layOutTexts(): void {
  const before = options.vnode
  options.vnode = (vnode) => {
    if (typeof vnode.type === 'string' && vnode.type !== 'textarea') holdTogether(vnode)
    before?.(vnode)
  }
}

function holdTogether({ props }: VNode<{ children?: ComponentChildren }>): void {
  const held = (each: ComponentChildren): ComponentChildren =>
    typeof each === 'string' ? (later()?.unbroken(each) ?? each) : each
  props.children = Array.isArray(props.children) ? props.children.map(held) : held(props.children)
}

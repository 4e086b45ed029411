import { fitOf } from '#shared/questions/fit/fit.ts'
import { brokenLaws } from '#tests/support/fit-laws.ts'
import { randomRequest } from '#tests/support/fit-requests.ts'

/* The laws of fit correction over as many random requests as one likes: `node tests/bench/fit-laws.ts REQUESTS FROM`. */
const requests = Number(process.argv[2] ?? 5000)
const from = Number(process.argv[3] ?? 1)
let [refused, broken] = [0, 0]
const actions: Record<string, number> = {}
const times: number[] = []
for (let seed = from; seed < from + requests; seed++) {
  const { bench, ...request } = randomRequest(seed)
  const start = process.cpuUsage().user
  const answer = fitOf(request)
  times.push(process.cpuUsage().user - start)
  if (!answer.ok) {
    refused++
    continue
  }
  const said = answer.value.action === 'stop' ? answer.value.reason : answer.value.action
  actions[said] = (actions[said] ?? 0) + 1
  const laws = brokenLaws(request, bench, answer.value)
  if (laws.length === 0) continue
  broken++
  console.log(seed, laws.join('; '))
}
times.sort((a, b) => a - b)
const millis = (share: number): string =>
  `${((times[Math.floor(share * (times.length - 1))] ?? 0) / 1000).toFixed(1)} ms`
console.log(`${requests} requests: ${broken} break a law, ${refused} refused; ${JSON.stringify(actions)}`)
console.log(`processor time: median ${millis(0.5)}, 95 % below ${millis(0.95)}, most ${millis(1)}`)
if (broken > 0) process.exitCode = 1

import { readFileSync } from 'node:fs'

/** Ticks of the kernel's accounts in a second: 100 on every Linux that Node runs on. */
const ticks = 100

/** CPU that a process has used so far, all its threads and the kernel for it, in seconds to the hundredth. */
export function cpuSeconds(pid: number): number {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
  // The name in brackets may hold spaces; what follows it does not (proc_pid_stat(5): utime is field 14).
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
  return (Number(fields[11]) + Number(fields[12])) / ticks
}

/** Resident memory of a process, in MB, as the kernel counts it. */
export function residentMegabytes(pid: number): number {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8')
  return Number(/VmRSS:\s+(\d+) kB/.exec(status)![1]) / 1024
}

/**
 * Processor time of this process so far [ms]. Bounds on freezing are held against this, not against the clock:
 * a busy machine makes everything late, but not more work.
 */
export function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

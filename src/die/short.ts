/** A space, slot or hole this little short of the least is as good, mm: a twenty-fifth of a die's tolerance. */
export const SHORT_MM = 0.01;

/** Standard gravity, m/s² (exact by definition); turns kilograms into newtons. */
export const GRAVITY = 9.80665;

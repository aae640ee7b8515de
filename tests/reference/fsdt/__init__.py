"""Shear-deformable (first-order) plates and shallow shells on scikit-fem: the independent reference of skinspan.

Conventions: z up, w up; u(z) = u0 + z tx, v(z) = v0 + z ty; curvatures kx = tx,x, ky = ty,y, kxy = tx,y + ty,x;
shear gx = w,x + tx, gy = w,y + ty; M = D k, Q = S g; equilibrium Q,x + p = 0 with p up. SI units throughout.
"""

"""Layered solids on bricks: what a shear-deformable plate cannot see beside a seat, a patch, a solid strip."""

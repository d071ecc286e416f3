"""Quadratic elements on a mapped grid: bricks in space, or rectangles of a body of revolution. Lengths in m.

An element has its nodes at the Gauss-Lobatto points (-1, 0, 1), its stiffness by three Gauss points a direction, and its volumes and faces by the
Lobatto rule, which puts each share of them on one node. A node on an axis has no share at all, as is right for quadratic functions: its temperature
follows its neighbours at once.
"""
import numpy as np

LOBATTO = np.array([1, 4, 1]) / 3
SLOPE = np.array([[-1.5, 2, -.5], [-.5, 0, .5], [.5, -2, 1.5]])  # of the shape functions at the nodes: row = node, column = function
GAUSS = np.array([-np.sqrt(.6), 0, np.sqrt(.6)])
GAUSS_WEIGHT = np.array([5, 8, 5]) / 9


def shapes(x):
    """The three shape functions at x (rows) and their slopes."""
    x = np.asarray(x, dtype=float)
    return (np.stack([x * (x - 1) / 2, 1 - x * x, x * (x + 1) / 2], axis=-1), np.stack([x - .5, -2 * x, x + .5], axis=-1))


def product(*factors):
    """Functions of each direction multiplied: rows = every combination of points, columns = every combination of functions."""
    out = np.ones((1, 1))
    for f in factors:
        out = np.kron(out, f)
    return out


def stiffness(at, revolved):
    """Each element's own matrix for a conductivity of 1: at[element, node, direction]."""
    dim = at.shape[2]
    value, slope = shapes(GAUSS)
    grad = np.stack([product(*[slope if d == e else value for d in range(dim)]) for e in range(dim)], axis=-1)  # point, node, direction
    weight = product(*[GAUSS_WEIGHT[:, None]] * dim)[:, 0]
    out = np.zeros((len(at), at.shape[1], at.shape[1]))
    for q in range(len(weight)):
        jacobian = np.einsum("na,end->ead", grad[q], at)
        size = np.abs(np.linalg.det(jacobian)) * weight[q]
        if revolved:
            size = size * 2 * np.pi * (at[:, :, 0] @ product(*[value] * dim)[q])
        real = np.einsum("eda,na->end", np.linalg.inv(jacobian), grad[q])
        out += size[:, None, None] * (real @ real.transpose(0, 2, 1))
    return out


def lobatto_size(at, revolved):
    """What each node has of an element's volume or of a face's area: at[element, node, coordinate], of one to three directions."""
    dim = round(np.log(at.shape[1]) / np.log(3))
    eye = np.eye(3)
    along = [np.einsum("mn,end->emd", product(*[SLOPE if d == e else eye for d in range(dim)]), at) for e in range(dim)]
    if dim == at.shape[2]:
        size = np.abs(np.linalg.det(np.stack(along, axis=-1)))
    elif dim == 2:
        size = np.linalg.norm(np.cross(along[0], along[1]), axis=-1)
    else:
        size = np.linalg.norm(along[0], axis=-1)
    size = size * product(*[LOBATTO[:, None]] * dim)[:, 0]
    return size * 2 * np.pi * at[:, :, 0] if revolved else size


def as_if_on_axis(size):
    """Shares that leave nothing out at an axis, for mixing alone: elements whose first direction begins there, size[element, node]."""
    out = size.reshape(len(size), 3, -1).copy()
    out[:, 0] += out[:, 1] * 3 / 32
    return out.reshape(size.shape)

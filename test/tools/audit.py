# Reads DXF files by ezdxf and tells what it found as JSON: faults, units, and what is drawn, with the arcs
# worked out from their bulges by ezdxf. Given a folder and a count: 0.dxf, 1.dxf and so on in it.
import json
import sys

import ezdxf
from ezdxf.math import bulge_to_arc
from ezdxf import units


def segments(polyline):
    points = list(polyline.get_points("xyb"))
    count = len(points) if polyline.closed else len(points) - 1
    for i in range(count):
        x0, y0, bulge = points[i]
        x1, y1, _ = points[(i + 1) % len(points)]
        segment = {"from": [x0, y0], "to": [x1, y1]}
        if bulge != 0:
            centre, _, _, radius = bulge_to_arc((x0, y0), (x1, y1), bulge)
            segment.update(centre=[centre.x, centre.y], radius=radius, anticlockwise=bulge > 0)
        yield segment


def drawn(entity):
    common = {"type": entity.dxftype(), "layer": entity.dxf.layer}
    if entity.dxftype() == "LWPOLYLINE":
        return {**common, "closed": entity.closed, "segments": list(segments(entity))}
    if entity.dxftype() == "CIRCLE":
        centre = entity.dxf.center
        return {**common, "centre": [centre.x, centre.y], "radius": entity.dxf.radius}
    return {**common, "text": entity.dxf.text}


def read(path):
    document = ezdxf.readfile(path)
    audit = document.audit()
    return {
        "errors": [e.message for e in audit.errors],
        "fixes": [f.message for f in audit.fixes],
        "units": "mm" if document.units == units.MM else str(document.units),
        "layers": [layer.dxf.name for layer in document.layers],
        "entities": [drawn(e) for e in document.modelspace()],
    }


folder, count = sys.argv[1], int(sys.argv[2])
print(json.dumps([read(f"{folder}/{i}.dxf") for i in range(count)]))

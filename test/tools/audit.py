# Reads DXF files by ezdxf and tells what it found as JSON: faults, units, layers with their looks, line types,
# how far the drawing reaches by the header and by what is in it, and what is drawn, with the arcs worked out from
# their bulges by ezdxf. Given a folder and a count: 0.dxf, 1.dxf and so on in it.
import json
import sys

import ezdxf
from ezdxf import bbox, units
from ezdxf.math import bulge_to_arc


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


def reach(entities):
    box = bbox.extents(entities)
    return [[box.extmin.x, box.extmin.y], [box.extmax.x, box.extmax.y]]


def drawn(entity):
    common = {"type": entity.dxftype(), "layer": entity.dxf.layer, "reach": reach([entity])}
    if entity.dxftype() == "LWPOLYLINE":
        return {**common, "closed": entity.closed, "segments": list(segments(entity))}
    if entity.dxftype() == "CIRCLE":
        centre = entity.dxf.center
        return {**common, "centre": [centre.x, centre.y], "radius": entity.dxf.radius}
    return {**common, "text": entity.plain_text()}


def pattern(line_type):
    return [tag.value for tag in line_type.pattern_tags.tags if tag.code == 49]


def read(path):
    document = ezdxf.readfile(path)
    audit = document.audit()
    space = document.modelspace()
    return {
        "errors": [e.message for e in audit.errors],
        "fixes": [f.message for f in audit.fixes],
        "units": "mm" if document.units == units.MM else str(document.units),
        "layers": {
            layer.dxf.name: {"colour": layer.dxf.color, "line": layer.dxf.linetype} for layer in document.layers
        },
        "lines": {line.dxf.name: pattern(line) for line in document.linetypes},
        "extents": [list(document.header[name])[:2] for name in ("$EXTMIN", "$EXTMAX")],
        "reach": reach(space),
        "entities": [drawn(e) for e in space],
    }


folder, count = sys.argv[1], int(sys.argv[2])
print(json.dumps([read(f"{folder}/{i}.dxf") for i in range(count)]))

/* SPDX-License-Identifier: MIT */
/* The few shapes of SVG a chart is drawn with. Lengths are user units. */
#ifndef OHM_SVG_H
#define OHM_SVG_H

#include <stdio.h>

struct ohm_svg {
  FILE *file;
};

/** Where a text stands against its point. */
enum ohm_svg_anchor { OHM_SVG_START, OHM_SVG_MIDDLE, OHM_SVG_END };

/** Open the picture: its size, its style, and what it says to one who cannot see it. */
void ohm_svg_begin(struct ohm_svg *svg, FILE *file, double width, double height, const char *style,
                   const char *title, const char *description);

void ohm_svg_end(struct ohm_svg *svg);

void ohm_svg_line(struct ohm_svg *svg, const char *style_class, double x1, double y1, double x2,
                  double y2);

void ohm_svg_circle(struct ohm_svg *svg, const char *style_class, double x, double y, double r);

void ohm_svg_rectangle(struct ohm_svg *svg, const char *style_class, double x, double y,
                       double width, double height);

void ohm_svg_text(struct ohm_svg *svg, const char *style_class, enum ohm_svg_anchor anchor,
                  double x, double y, const char *text);

/** A path: begin, points in order, end (closed or open). */
void ohm_svg_path_begin(struct ohm_svg *svg, const char *style_class);
void ohm_svg_path_point(struct ohm_svg *svg, double x, double y);
void ohm_svg_path_end(struct ohm_svg *svg);

#endif

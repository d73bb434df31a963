/* SPDX-License-Identifier: MIT */
/* The few shapes of SVG a chart is drawn with. Lengths are user units. */
#ifndef SHELL_SVG_H
#define SHELL_SVG_H

#include <stdio.h>

struct shell_svg {
  FILE *file;
};

/** Where a text stands against its point. */
enum shell_svg_anchor { SHELL_SVG_START, SHELL_SVG_MIDDLE, SHELL_SVG_END };

/** Open the picture: its size, its style, and what it says to one who cannot see it. */
void shell_svg_begin(struct shell_svg *svg, FILE *file, double width, double height,
                     const char *style, const char *title, const char *description);

void shell_svg_end(struct shell_svg *svg);

void shell_svg_line(struct shell_svg *svg, const char *style_class, double x1, double y1, double x2,
                    double y2);

void shell_svg_circle(struct shell_svg *svg, const char *style_class, double x, double y, double r);

void shell_svg_rectangle(struct shell_svg *svg, const char *style_class, double x, double y,
                         double width, double height);

void shell_svg_text(struct shell_svg *svg, const char *style_class, enum shell_svg_anchor anchor,
                    double x, double y, const char *text);

/** A path: begin, points in order, end (closed or open). */
void shell_svg_path_begin(struct shell_svg *svg, const char *style_class);
void shell_svg_path_point(struct shell_svg *svg, double x, double y);
void shell_svg_path_end(struct shell_svg *svg);

#endif

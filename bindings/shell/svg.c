/* SPDX-License-Identifier: MIT */
#include "svg.h"

#include <ohmcurve.h>

static void put_number(struct shell_svg *svg, double value) {
  char digits[OHM_NUMBER_SIZE];
  ohm_number_print_fixed(value, 2, digits, sizeof digits);
  fputs(digits, svg->file);
}

static void put_attribute(struct shell_svg *svg, const char *name, double value) {
  fprintf(svg->file, " %s=\"", name);
  put_number(svg, value);
  fputc('"', svg->file);
}

/* Control characters have no place in XML, not even escaped. */
static void put_escaped(struct shell_svg *svg, const char *text) {
  for (; *text; text++) {
    unsigned char byte = (unsigned char)*text;
    if (byte == '&')
      fputs("&amp;", svg->file);
    else if (byte == '<')
      fputs("&lt;", svg->file);
    else if (byte == '>')
      fputs("&gt;", svg->file);
    else if (byte == '"')
      fputs("&quot;", svg->file);
    else
      fputc(byte < 0x20 && byte != '\n' ? ' ' : byte, svg->file);
  }
}

void shell_svg_begin(struct shell_svg *svg, FILE *file, double width, double height,
                     const char *style, const char *title, const char *description) {
  svg->file = file;
  fputs("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" "
        "aria-labelledby=\"chart-title chart-text\" viewBox=\"0 0 ",
        file);
  put_number(svg, width);
  fputc(' ', file);
  put_number(svg, height);
  fputs("\">\n<title id=\"chart-title\">", file);
  put_escaped(svg, title);
  fputs("</title>\n<desc id=\"chart-text\">", file);
  put_escaped(svg, description);
  fprintf(file, "</desc>\n<style>\n%s</style>\n", style);
}

void shell_svg_end(struct shell_svg *svg) {
  fputs("</svg>\n", svg->file);
}

static void begin_shape(struct shell_svg *svg, const char *shape, const char *style_class) {
  fprintf(svg->file, "<%s class=\"%s\"", shape, style_class);
}

void shell_svg_line(struct shell_svg *svg, const char *style_class, double x1, double y1, double x2,
                    double y2) {
  begin_shape(svg, "line", style_class);
  put_attribute(svg, "x1", x1);
  put_attribute(svg, "y1", y1);
  put_attribute(svg, "x2", x2);
  put_attribute(svg, "y2", y2);
  fputs("/>\n", svg->file);
}

void shell_svg_circle(struct shell_svg *svg, const char *style_class, double x, double y,
                      double r) {
  begin_shape(svg, "circle", style_class);
  put_attribute(svg, "cx", x);
  put_attribute(svg, "cy", y);
  put_attribute(svg, "r", r);
  fputs("/>\n", svg->file);
}

void shell_svg_rectangle(struct shell_svg *svg, const char *style_class, double x, double y,
                         double width, double height) {
  begin_shape(svg, "rect", style_class);
  put_attribute(svg, "x", x);
  put_attribute(svg, "y", y);
  put_attribute(svg, "width", width);
  put_attribute(svg, "height", height);
  fputs("/>\n", svg->file);
}

void shell_svg_text(struct shell_svg *svg, const char *style_class, enum shell_svg_anchor anchor,
                    double x, double y, const char *text) {
  static const char *const anchors[] = {"start", "middle", "end"};
  begin_shape(svg, "text", style_class);
  put_attribute(svg, "x", x);
  put_attribute(svg, "y", y);
  fprintf(svg->file, " text-anchor=\"%s\">", anchors[anchor]);
  put_escaped(svg, text);
  fputs("</text>\n", svg->file);
}

void shell_svg_path_begin(struct shell_svg *svg, const char *style_class) {
  begin_shape(svg, "polyline", style_class);
  fputs(" points=\"", svg->file);
}

void shell_svg_path_point(struct shell_svg *svg, double x, double y) {
  put_number(svg, x);
  fputc(',', svg->file);
  put_number(svg, y);
  fputc(' ', svg->file);
}

void shell_svg_path_end(struct shell_svg *svg) {
  fputs("\"/>\n", svg->file);
}

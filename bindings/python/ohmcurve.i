/* SPDX-License-Identifier: MIT */
/*
 * The private module ohmcurve._ohmcurve: the header as it stands, with statuses
 * as exceptions, outputs as results and arrays as buffers of double. The classes
 * people use are written by hand in ohmcurve/.
 */
%module(package="ohmcurve") ohmcurve

%{
#include <ohmcurve.h>
#include <stdalign.h>
#include <stdint.h>
#include <string.h>

/* The class is looked up when it is needed, so the module keeps no state. */
static void raise_error(int status, const char *message, int line, int column) {
  PyObject *module = NULL, *type = NULL, *text = NULL, *error = NULL;
  if (status == OHM_NO_MEMORY) {
    PyErr_SetString(PyExc_MemoryError, message);
    return;
  }
  if ((module = PyImport_ImportModule("ohmcurve.error")) &&
      (type = PyObject_GetAttrString(module, "Error")) &&
      (text = PyUnicode_DecodeUTF8(message, (Py_ssize_t)strlen(message), "replace")) &&
      (error = PyObject_CallFunction(type, "Oiii", text, status, line, column)))
    PyErr_SetObject(type, error);
  Py_XDECREF(error);
  Py_XDECREF(text);
  Py_XDECREF(type);
  Py_XDECREF(module);
}

static const char *text_of(PyObject *object, Py_ssize_t *length) {
  if (PyUnicode_Check(object))
    return PyUnicode_AsUTF8AndSize(object, length);
  if (PyBytes_Check(object)) {
    *length = PyBytes_GET_SIZE(object);
    return PyBytes_AS_STRING(object);
  }
  PyErr_Format(PyExc_TypeError, "%s was given where a text is needed: pass a str",
               Py_TYPE(object)->tp_name);
  return NULL;
}

/* A text that ends at its first NUL would be read as something shorter. */
static const char *whole_text_of(PyObject *object) {
  Py_ssize_t length = 0;
  const char *text = text_of(object, &length);
  if (text && strlen(text) != (size_t)length) {
    PyErr_SetString(PyExc_ValueError, "the text holds a NUL character: leave it out");
    return NULL;
  }
  return text;
}

static int refuse(Py_buffer *view, PyObject *type, const char *sentence, const char *given) {
  PyErr_Format(type, sentence, given);
  PyBuffer_Release(view);
  return -1;
}

/* In the byte order of this machine, however it is spelt. */
static int is_double(const Py_buffer *view) {
  const char *format = view->format ? view->format : "B";
  if (*format == '@' || *format == '=' || *format == (PY_LITTLE_ENDIAN ? '<' : '>'))
    format++;
  return view->itemsize == sizeof(double) && strcmp(format, "d") == 0;
}

/* Numbers one behind the other in memory: where they begin, how many, how far apart. */
struct series {
  char *first;
  size_t count;
  size_t stride;
};

static struct series series_of(const Py_buffer *view) {
  size_t count = (size_t)view->len / sizeof(double);
  int is_row = count > 1 && view->ndim == 1 && view->strides;
  size_t stride = is_row ? (size_t)view->strides[0] : sizeof(double);
  return (struct series){(char *)view->buf, count, stride};
}

/* Without gaps, or one row that runs forward. */
static int is_in_line(const Py_buffer *view) {
  return PyBuffer_IsContiguous(view, 'C') ||
         (view->ndim == 1 && !view->suboffsets && view->strides &&
          view->strides[0] >= (Py_ssize_t)sizeof(double));
}

static int is_aligned(const Py_buffer *view) {
  return view->len == 0 || ((uintptr_t)view->buf % alignof(double) == 0 &&
                            series_of(view).stride % alignof(double) == 0);
}

static int doubles_of(PyObject *object, int writable, int may_have_gaps, Py_buffer *view) {
  if (PyObject_GetBuffer(object, view, PyBUF_FULL_RO) < 0)
    return -1;
  if (!is_double(view))
    return refuse(view, PyExc_TypeError,
                  "the items of the array have the format '%s' where only 'd' (float64) is read: "
                  "convert them, for instance with array.array('d', values)",
                  view->format ? view->format : "B");
  if (may_have_gaps ? !is_in_line(view) : !PyBuffer_IsContiguous(view, 'C'))
    return refuse(view, PyExc_TypeError,
                  may_have_gaps ? "the array is %s in more than one row, or backwards: copy it first"
                                : "the array is %s where only one without gaps is read: copy it first",
                  "strided");
  if (!is_aligned(view))
    return refuse(view, PyExc_TypeError,
                  "the array is %s, its items begin between two numbers of memory: copy it first",
                  "misaligned");
  if (writable && view->readonly)
    return refuse(view, PyExc_TypeError,
                  "the array for the results is %s: pass one that can be written to", "read-only");
  return 0;
}

/* Whether two series share memory in any other way than item by item. */
static int overlap_in_part(struct series one, struct series other) {
  if (one.count == 0 || one.first + (one.count - 1) * one.stride + sizeof(double) <= other.first ||
      other.first + (other.count - 1) * other.stride + sizeof(double) <= one.first)
    return 0;
  if (one.stride != other.stride)
    return 1;
  size_t ahead = (size_t)(one.first < other.first ? other.first - one.first
                                                  : one.first - other.first);
  size_t inside = ahead % one.stride;
  return ahead != 0 && (inside < sizeof(double) || inside > one.stride - sizeof(double));
}

/* Two arrays of one length, the second perhaps to be written and both with gaps then. */
static int pair_of(PyObject *pair, int writable, Py_buffer views[2]) {
  PyObject *first, *second;
  if (!PyArg_ParseTuple(pair, "OO", &first, &second) ||
      doubles_of(first, 0, writable, &views[0]) < 0)
    return -1;
  if (doubles_of(second, writable, writable, &views[1]) == 0) {
    if (views[0].len != views[1].len)
      PyErr_Format(PyExc_ValueError,
                   "the arrays hold %zd and %zd numbers: pass arrays of one length",
                   views[0].len / (Py_ssize_t)sizeof(double),
                   views[1].len / (Py_ssize_t)sizeof(double));
    else if (writable && overlap_in_part(series_of(&views[0]), series_of(&views[1])))
      PyErr_SetString(PyExc_ValueError, "the arrays overlap in part: pass the same array twice, "
                                        "or two that share nothing");
    else
      return 0;
    PyBuffer_Release(&views[1]);
  }
  PyBuffer_Release(&views[0]);
  return -1;
}
%}

/* ---- statuses are exceptions --------------------------------------------- */

%typemap(out) ohm_status "$result = SWIG_Py_Void(); (void)$1;"
%typemap(in, numinputs=0) ohm_error *error (ohm_error error) "memset(&error, 0, sizeof error); $1 = &error;"
%typemap(argout) ohm_error *error {
  if ($1->status != OHM_OK) {
    raise_error($1->status, $1->message, $1->line, $1->column);
    Py_CLEAR($result);
    SWIG_fail;
  }
}
/* Only a call without an ohm_error comes here with a failure. */
%typemap(ret) ohm_status {
  if ($1 != OHM_OK) {
    Py_CLEAR(resultobj);
    raise_error($1, ohm_status_text($1), 0, 0);
  }
}

/* Where these find nothing they still tell the rest; what is not there is NaN. */
%typemap(ret) ohm_status ohm_fit_parameter, ohm_status ohm_fit_covariance,
              ohm_status ohm_fit_chi_square, ohm_status ohm_fit_temperature,
              ohm_status ohm_sensor_temperature {
  if ($1 != OHM_OK && $1 != OHM_NOT_FOUND) {
    Py_CLEAR(resultobj);
    raise_error($1, ohm_status_text($1), 0, 0);
  }
}

/* ---- outputs are results -------------------------------------------------- */

%include <typemaps.i>
%apply double *OUTPUT {
  double *value, double *t_c, double *r_ohm, double *alpha_per_k,
  double *low_c, double *high_c, double *at_low_ohm, double *at_high_ohm,
  double *low_ohm, double *nominal_ohm, double *high_ohm, double *pressure_hpa,
  double *covariance, double *correlation, double *chi_square, double *probability,
  double *expanded_k, double *after_h, double *tau_h, double *v_volt, double *nearest_ohm,
  double *shown_c
};
%apply size_t *OUTPUT { size_t *failed, size_t *index };
%typemap(in, numinputs=0) ohm_estimate * (ohm_estimate estimate) "$1 = &estimate;"
%typemap(argout) ohm_estimate * {
  $result = SWIG_Python_AppendOutput($result, Py_BuildValue("(dd)", $1->value, $1->u));
}
%typemap(in, numinputs=0) ohm_conformance *conformance (ohm_conformance parts) "$1 = &parts;"
%typemap(argout) ohm_conformance *conformance {
  $result = SWIG_Python_AppendOutput(
      $result, Py_BuildValue("(ddd)", $1->p_low, $1->p_within, $1->p_high));
}

/* ---- texts ------------------------------------------------------------------ */

%typemap(in) const char * {
  if (!($1 = ($1_ltype)whole_text_of($input)))
    SWIG_fail;
}
%typemap(freearg) const char * ""
/* None unsets a setting; where a text is required the library says so itself. */
%typemap(in) const char *text {
  $1 = NULL;
  if ($input != Py_None && !($1 = ($1_ltype)whole_text_of($input)))
    SWIG_fail;
}
%typemap(in) (const char *text, size_t length) {
  Py_ssize_t length = 0;
  if (!($1 = ($1_ltype)text_of($input, &length)))
    SWIG_fail;
  $2 = (size_t)length;
}
%typemap(in) const char *path (PyObject *bytes = NULL) {
  if (!PyUnicode_FSConverter($input, &bytes))
    SWIG_fail;
  $1 = PyBytes_AS_STRING(bytes);
}
%typemap(freearg) const char *path "Py_XDECREF(bytes$argnum);"

/* The caller gives the size, and gets the length of the whole text and the text. */
%typemap(in) (char *buffer, size_t size) {
  $2 = PyLong_AsSize_t($input);
  if (PyErr_Occurred())
    SWIG_fail;
  if (!($1 = (char *)PyMem_Calloc($2 + 1, 1))) {
    PyErr_NoMemory();
    SWIG_fail;
  }
}
%typemap(argout) (char *buffer, size_t size) {
  $result = SWIG_Python_AppendOutput($result, SWIG_FromCharPtr($1));
}
%typemap(freearg) (char *buffer, size_t size) "PyMem_Free($1);"

/* ---- arrays ----------------------------------------------------------------- */

%define GIVES_BACK(ARGUMENTS)
%typemap(argout) ARGUMENTS ""
%typemap(freearg) ARGUMENTS {
  if (held$argnum) {
    PyBuffer_Release(&views$argnum[0]);
    PyBuffer_Release(&views$argnum[1]);
  }
}
%enddef

/* Two arrays that are read. */
%define READS(FIRST, SECOND)
%typemap(in) (FIRST, SECOND, size_t count) (Py_buffer views[2], int held = 0) {
  if (pair_of($input, 0, views) < 0)
    SWIG_fail;
  held = 1;
  $1 = ($1_ltype)views[0].buf;
  $2 = ($2_ltype)views[1].buf;
  $3 = series_of(&views[0]).count;
}
GIVES_BACK((FIRST, SECOND, size_t count))
%enddef
READS(const double *t_c, const double *r_ohm)
READS(const double *after_h, const double *t_c)

/* One that is read and one that is filled. */
%define FILLS(FROM, FROM_STRIDE, TO, TO_STRIDE)
%typemap(in) (FROM, FROM_STRIDE, TO, TO_STRIDE, size_t count) (Py_buffer views[2], int held = 0) {
  if (pair_of($input, 1, views) < 0)
    SWIG_fail;
  held = 1;
  $1 = ($1_ltype)views[0].buf;
  $2 = series_of(&views[0]).stride;
  $3 = ($3_ltype)views[1].buf;
  $4 = series_of(&views[1]).stride;
  $5 = series_of(&views[0]).count;
}
GIVES_BACK((FROM, FROM_STRIDE, TO, TO_STRIDE, size_t count))
%enddef
FILLS(const double *r_ohm, size_t r_stride, double *t_c, size_t t_stride)
FILLS(const double *t_c, size_t t_stride, double *r_ohm, size_t r_stride)

/* Which of the sensors built in, in place of how many. */
%typemap(in, numinputs=0) (size_t *indices, size_t room) {
  $2 = ohm_sensor_built_in_count();
  if (!($1 = PyMem_New(size_t, $2))) {
    PyErr_NoMemory();
    SWIG_fail;
  }
}
%typemap(argout) (size_t *indices, size_t room) {
  Py_SETREF($result, PyList_New(0));
  for (size_t i = 0; $result && i < result; i++) {
    PyObject *index = PyLong_FromSize_t($1[i]);
    if (!index || PyList_Append($result, index) < 0)
      Py_CLEAR($result);
    Py_XDECREF(index);
  }
  if (!$result)
    SWIG_fail;
}
%typemap(freearg) (size_t *indices, size_t room) "PyMem_Free($1);"

/* The words of a sequence. */
%typemap(in) (const char *const *words, size_t count) (PyObject *all = NULL) {
  if (!(all = PySequence_Fast($input, "the words are no sequence: pass a list of str")))
    SWIG_fail;
  $2 = (size_t)PySequence_Fast_GET_SIZE(all);
  if (!($1 = ($1_ltype)PyMem_New(const char *, $2 + 1))) {
    PyErr_NoMemory();
    SWIG_fail;
  }
  for (size_t i = 0; i < $2; i++)
    if (!(((const char **)$1)[i] = whole_text_of(PySequence_Fast_GET_ITEM(all, (Py_ssize_t)i))))
      SWIG_fail;
}
%typemap(freearg) (const char *const *words, size_t count) {
  PyMem_Free((void *)$1);
  Py_XDECREF(all$argnum);
}

/* Structs in a row, of a length that only their user knows. */
%include <carrays.i>
%array_class(ohm_fit_point, fit_points)

/* Only these two calls run long enough to let other threads in. */
%define LETS_THREADS_IN(FUNCTION)
%exception FUNCTION {
  Py_BEGIN_ALLOW_THREADS
  $action
  Py_END_ALLOW_THREADS
}
%enddef
LETS_THREADS_IN(ohm_curve_temperatures)
LETS_THREADS_IN(ohm_curve_resistances)

/* ---- objects ---------------------------------------------------------------- */

%newobject ohm_curve_beta_new;
%newobject ohm_curve_steinhart_hart_new;
%newobject ohm_curve_four_term_new;
%newobject ohm_curve_four_term_of_temperature_new;
%newobject ohm_curve_platinum_new;
%newobject ohm_curve_silicon_new;
%newobject ohm_curve_points_new;
%newobject ohm_curve_fit;
%newobject ohm_fit_sensor_new;
%newobject ohm_audit_parse;
%newobject ohm_audit_load;
%newobject ohm_history_new;
%newobject ohm_history_parse;
%newobject ohm_history_load;
%newobject ohm_sensor_parse;
%newobject ohm_sensor_load;
%newobject ohm_sensor_built_in_load;
%newobject ohm_circuit_parse;
%newobject ohm_circuit_load;
%newobject ohm_circuit_built_in_load;
%newobject ohm_bench_new;
%newobject ohm_bench_copy_new;
/* Whatever the verb, its answer is the caller's. */
%typemap(out) ohm_answer * "$result = SWIG_NewPointerObj($1, $descriptor, SWIG_POINTER_OWN);"

%define FREES_ITSELF(TYPE)
%ignore TYPE ## _free;
%nodefaultctor TYPE;
typedef struct TYPE {
} TYPE;
%extend TYPE {
  ~TYPE() {
    TYPE ## _free($self);
  }
}
%enddef
FREES_ITSELF(ohm_curve)
FREES_ITSELF(ohm_sensor)
FREES_ITSELF(ohm_fit)
FREES_ITSELF(ohm_audit)
FREES_ITSELF(ohm_history)
FREES_ITSELF(ohm_circuit)
FREES_ITSELF(ohm_bench)
FREES_ITSELF(ohm_answer)

%extend ohm_fit_request {
  ohm_fit_request() {
    ohm_fit_request *made = (ohm_fit_request *)calloc(1, sizeof *made);
    if (made)
      *made = (ohm_fit_request)OHM_FIT_REQUEST_INIT;
    return made;
  }
}

/* Its texts belong to the audit. */
%nodefaultctor ohm_suspect;
%immutable ohm_suspect::name;
%immutable ohm_suspect::printed;
%immutable ohm_suspect::would_fit;
%immutable ohm_suspect::sentence;

%ignore ohm_error;
%ignore ohm_estimate;
%ignore ohm_conformance;

%include "ohmcurve.h"

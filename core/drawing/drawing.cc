#include "core/drawing/drawing.h"

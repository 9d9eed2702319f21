#include "core/geodesy/grid_reference.h"

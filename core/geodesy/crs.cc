#include "core/geodesy/crs.h"

#include "core/geodesy/geodesic.h"

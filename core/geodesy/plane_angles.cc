#include "core/geodesy/plane_angles.h"

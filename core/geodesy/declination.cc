#include "core/geodesy/declination.h"

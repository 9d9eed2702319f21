#include "core/units/time.h"

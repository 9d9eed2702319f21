#include "core/units/uuid.h"

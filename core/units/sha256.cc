#include "core/units/sha256.h"

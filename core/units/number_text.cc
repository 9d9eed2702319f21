#include "core/units/number_text.h"

#include "core/plan/difference.h"

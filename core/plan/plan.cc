#include "core/plan/plan.h"

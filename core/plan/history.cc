#include "core/plan/history.h"

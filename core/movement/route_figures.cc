#include "core/movement/route_figures.h"

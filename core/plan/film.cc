#include "core/plan/film.h"

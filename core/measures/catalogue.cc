#include "core/measures/catalogue.h"

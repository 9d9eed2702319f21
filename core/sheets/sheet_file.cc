#include "core/sheets/sheet_file.h"

// painter

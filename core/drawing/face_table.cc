// face_table

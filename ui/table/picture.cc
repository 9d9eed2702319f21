// picture

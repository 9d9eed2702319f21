// demo

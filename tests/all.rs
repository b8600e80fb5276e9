mod placeholder {}

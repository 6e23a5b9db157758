process.stdout.write("pintle 0.1.0\n");
